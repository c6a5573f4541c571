/** All tests of the helper, with one browser and one instance. */

import { after } from "node:test";
import { closeAll } from "./browser.js";

after(closeAll);
await import("./first_use.js");
await import("./entry.js");
await import("./states.js");
await import("./network.js");
await import("./embedding.js");
