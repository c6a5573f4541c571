/** What pages and networks do to the helper, and how accessible it is in every state. */

import { after } from "node:test";
import { closeAll } from "./browser.js";
import "./states.js";
import "./network.js";
import "./embedding.js";

after(closeAll);
