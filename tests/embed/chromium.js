/** The browser of all tests, and what judges its pages. */

import { existsSync, readFileSync } from "node:fs";
import { chromium } from "playwright-core";

const PROGRAM = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find((path) => existsSync(path));
const AXE = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const RULES = { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] };

export const launch = () => chromium.launch({ executablePath: PROGRAM, args: ["--no-sandbox", "--disable-gpu"] });

/** What axe-core says of a page by WCAG 2.2 AA: `violations` and `passes`. @param {import("playwright-core").Page} page */
export async function judged(page) {
  await page.evaluate(AXE);
  return page.evaluate((rules) => globalThis.axe.run(document, rules), RULES);
}
