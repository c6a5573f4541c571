/** Accessibility (WCAG 2.2 AA) in every state, as axe-core judges it. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { askFor, controls, event, finish, open, relay } from "./browser.js";
import { judged } from "./chromium.js";

const ALL = 'show="summary drawing findings cart sheet" fields="all"';

/** A job that must not be built so. */
export const STOPPED = { opening: { width: "24 ft", barrier: "overhead_door" }, site_hazards: ["post_tensioned_slab"] };
const MISFIT = [{ sku: "TIB-44", along_travel: "4 ft", across_lane: "4 ft", lead_in_length: "20 ft" }];

const refuse = (status, problem, headers = {}) => (call, response, cors) => {
  if (!call.path.startsWith("/v1/loop-sizing")) return false;
  response.writeHead(status, { ...cors, "content-type": "application/problem+json", ...headers }).end(JSON.stringify({ status, errors: [], ...problem }));
  return true;
};

/** Asks for that job. */
export async function askForStopped(page) {
  await event(page, "ready");
  await page.evaluate((value) => {
    const helper = document.querySelector("loopwright-helper");
    helper.value = value;
    return helper.ask();
  }, STOPPED);
}

/** How a page gets into each state. */
const STATES = {
  empty: async (page) => void (await event(page, "ready")),
  invalid: async (page) => {
    await event(page, "ready");
    await controls(page).ask.click();
    await page.getByText("Fill this in.").waitFor();
  },
  "with a suggestion": async (page) => {
    await askFor(page, { width: "7,200 mm" });
    await page.getByRole("button", { name: "Use 7200 mm" }).waitFor();
  },
  busy: async (page) => {
    const { held } = relay.hold();
    relay.fault = async (call) => void (call.path.startsWith("/v1/loop-sizing") && (await held));
    await askFor(page);
    await page.getByRole("button", { name: "Calculating" }).waitFor();
  },
  answer: async (page) => {
    await askFor(page);
    await page.getByRole("img").waitFor();
    for (const fold of await page.locator("summary").all()) await fold.click();
  },
  "in the shop's colours": async (page) => {
    await askFor(page);
    await page.getByRole("img").waitFor();
    await controls(page).add.click();
  },
  stop: async (page) => {
    await askForStopped(page);
    await page.getByText("Do not saw a post-tensioned slab").first().waitFor();
    await page.getByRole("img").waitFor();
  },
  "no match": async (page) => {
    await page.evaluate((stock) => (document.querySelector("loopwright-helper").stock = stock), MISFIT);
    await askFor(page);
    await page.getByText("None of the loops in stock fits").waitFor();
  },
  "of before": async (page) => {
    await askFor(page);
    await event(page, "result");
    await controls(page).width.fill("12");
    await page.getByText("This answer is for what you entered before.").waitFor();
  },
  offline: async (page) => {
    await askFor(page);
    await event(page, "result");
    await page.context().setOffline(true);
    await page.getByText("You are offline.").first().waitFor();
  },
  refused: async (page) => {
    relay.fault = refuse(403, { code: "key_not_for_here" });
    await askFor(page);
    await page.getByText("This page may not ask for loops.").first().waitFor();
  },
};

/** The pages of the states that are not on the plain one. */
const PAGES = { "in the shop's colours": "boatyard.html" };

for (const [state, enter] of Object.entries(STATES)) {
  test(`accessible: ${state}`, async () => {
    const page = await open(PAGES[state] ?? "plain.html", { query: { attributes: ALL }, bypassCSP: true });
    await enter(page);
    for (const [colorScheme, width] of [["light", 390], ["dark", 1300]]) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: 800 });
      const found = await judged(page);
      const told = found.violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id}: ${target} ${failureSummary}`));
      assert.deepEqual(told, [], `${state}, ${colorScheme}`);
      // A rule that finds nothing to judge proves nothing.
      for (const rule of ["color-contrast", "label", "button-name", "aria-valid-attr"]) {
        assert.ok(found.passes.some(({ id }) => id === rule), `${rule} had nothing to judge`);
      }
      if (process.env.SHOTS) {
        await page.screenshot({ path: `${process.env.SHOTS}/state-${state.replaceAll(" ", "-")}-${colorScheme}.png`, fullPage: true });
      }
    }
    relay.reset();
    await finish(page);
  });
}

test("axe is one that finds something", async () => {
  const page = await open("plain.html", { query: { inside: "<p slot='intro'><input></p>" }, bypassCSP: true });
  await event(page, "ready");
  const found = await judged(page);
  assert.deepEqual(found.violations.map(({ id }) => id), ["label"]);
  await finish(page);
});
