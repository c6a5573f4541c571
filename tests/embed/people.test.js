/** What people do with the helper, and the script itself. */

import { after } from "node:test";
import { closeAll } from "./browser.js";
import "./first_use.js";
import "./entry.js";
import "./shops.js";
import "./source.js";

after(closeAll);
