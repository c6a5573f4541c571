/** All tests of the helper, with one browser and one instance. */

import { after } from "node:test";
import { closeAll } from "./browser.js";
import "./first_use.js";
import "./entry.js";
import "./states.js";
import "./network.js";
import "./embedding.js";

after(closeAll);
