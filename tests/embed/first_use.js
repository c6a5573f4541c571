/** What the first users do: a customer with a telephone at a gate, a clerk with a keyboard. */

import assert from "node:assert/strict";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { test } from "node:test";
import { askFor, controls, event, finish, open, relay } from "./browser.js";

test("a customer gets loops, a picture, what to watch and a cart", async () => {
  const page = await open("plain.html", { query: { lang: "es" }, hasTouch: true, isMobile: true });
  await event(page, "ready");
  const { width, barrier, ask, add } = controls(page, "es");
  await width.fill("7,2");
  await page.getByRole("radiogroup", { name: "Ancho libre" }).getByRole("radio", { name: "m" }).tap();
  assert.equal(await width.inputValue(), "7,2 m");
  await barrier.selectOption("Portón corredizo");
  await ask.tap();
  const { summary, requestId } = await event(page, "result");
  assert.equal(summary.lines.length, 3);
  assert.match(requestId, /^[\w.-]+$/);
  await page.getByRole("heading", { name: summary.headline }).waitFor();
  await page.getByRole("img").waitFor();
  await page.locator(".found", { hasText: "Haga que otro dispositivo" }).first().waitFor();
  await add.tap();
  const { lines } = await event(page, "add-to-cart");
  assert.deepEqual(lines.map(({ quantity, marks }) => [quantity, marks]), [[3, ["A", "B", "C"]]]);
  assert.match(lines[0].specification, /Alambre/);
  await page.getByText("Entregado al carrito").first().waitFor();
  assert.deepEqual(await finish(page), []);
});

test("everything that is pressed is large enough for gloves", async () => {
  const page = await open("plain.html", { query: { attributes: 'fields="all" show="summary drawing findings cart sheet"' } });
  await askFor(page);
  await event(page, "result");
  const small = await page.evaluate(() => {
    const root = document.querySelector("loopwright-helper").shadowRoot;
    for (const fold of root.querySelectorAll("details")) fold.open = true;
    return [...root.querySelectorAll("button, select, summary, input, .tick")].flatMap((one) => {
      // A box is pressed on its whole line.
      const { width, height } = (one.closest("label") ?? one).getBoundingClientRect();
      return !one.checkVisibility() || width >= 44 && height >= 44 ? [] : [`${one.tagName} ${one.textContent} ${width} x ${height}`];
    });
  });
  assert.deepEqual(small, []);
  assert.deepEqual(await finish(page), []);
});

test("a clerk does it all with the keyboard alone, from the first field to the cart and the sheet", async () => {
  const page = await open("plain.html", { query: { attributes: 'fields="all" show="summary drawing findings cart sheet"' } });
  await event(page, "ready");
  const focused = () => page.evaluate(() => {
    const at = document.activeElement?.shadowRoot?.activeElement;
    return at ? `${at.tagName} ${at.id || at.textContent}` : "";
  });
  /** Goes on until there, and says where it went. */
  const goTo = async (there) => {
    const way = [];
    for (let step = 0; step < 160; step += 1) {
      await page.keyboard.press("Tab");
      way.push(await focused());
      if (way.at(-1).includes(there)) return way;
    }
    assert.fail(`${there} is not reached: ${way}`);
  };
  await goTo("opening-width");
  await page.keyboard.type("24 ft");
  await goTo("opening-barrier");
  await page.keyboard.type("Sliding");
  await goTo("SUMMARY Lead-in");
  await page.keyboard.press("Space");
  await goTo("lead_in-length");
  await page.keyboard.type("60");
  await page.keyboard.press("Enter");
  const { report } = await event(page, "result");
  assert.equal(report.inputs.lead_in.length.ft, 60);
  // The unit was that of the width, and is to be seen.
  assert.equal(await page.locator("#lead_in-length").inputValue(), "60 ft");
  const way = await goTo("Add to cart");
  assert.ok(way.some((one) => one.startsWith("SUMMARY What else")), String(way));
  await page.keyboard.press("Enter");
  assert.equal((await event(page, "add-to-cart")).lines.length, 1);
  await goTo("Job sheet");
  const [sheet] = await Promise.all([page.waitForEvent("popup"), page.keyboard.press("Space")]);
  await sheet.getByRole("heading", { level: 1, name: /Job sheet/ }).waitFor();
  assert.deepEqual(await finish(page), []);
});

test("the job sheet keeps its look and its standards in a window with the shop's policy", async () => {
  const page = await open("plain.html", { query: { attributes: 'show="summary sheet"' } });
  await askFor(page);
  await event(page, "result");
  const [sheet] = await Promise.all([page.waitForEvent("popup"), page.getByRole("button", { name: "Job sheet" }).click()]);
  await sheet.getByRole("heading", { level: 1 }).waitFor();
  const look = await sheet.evaluate(() => ({
    mode: document.compatMode, title: document.title, language: document.documentElement.lang,
    collapse: getComputedStyle(document.querySelector("table")).borderCollapse,
    drawings: [...document.querySelectorAll("svg")].map((svg) => Math.round(svg.getBoundingClientRect().width)),
  }));
  assert.equal(look.mode, "CSS1Compat");
  assert.equal(look.collapse, "collapse");
  assert.equal(look.language, "en");
  assert.match(look.title, /Job sheet/);
  assert.ok(look.drawings.length && look.drawings.every((width) => width > 200), String(look.drawings));
  if (process.env.SHOTS) await sheet.screenshot({ path: `${process.env.SHOTS}/sheet.png` });
  assert.deepEqual(await finish(page), []);
});

test("where no window may open, the sheet is saved as a file", async () => {
  const page = await open("plain.html", { query: { attributes: 'show="sheet"' }, before: () => (globalThis.open = () => null) });
  await askFor(page);
  await event(page, "result");
  const [saved] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Job sheet" }).click()]);
  const text = readFileSync(await saved.path(), "utf8");
  assert.match(text, /^<!doctype html><html lang="en">/i);
  assert.match(text, /<style>/);
  await page.getByText("saved as a file").first().waitFor();
  assert.deepEqual(await finish(page), []);
});

for (const language of ["en", "es", "fr"]) {
  test(`who does not see the answer is told all of it: ${language}`, async () => {
    const attributes = 'show="summary drawing findings cart sheet"';
    const page = await open("plain.html", { query: { lang: language, attributes } });
    await askFor(page, { language });
    await event(page, "result");
    await page.getByRole("img").waitFor();
    const session = await page.context().newCDPSession(page);
    const { nodes } = await session.send("Accessibility.getFullAXTree");
    const picture = nodes.find(({ role }) => role?.value === "image").name.value;
    const tree = `${await page.locator("loopwright-helper").ariaSnapshot()}\n\nThe picture: ${picture}\n`;
    const kept = new URL(`answer.${language}.txt`, import.meta.url);
    if (process.env.KEEP_ANSWERS || !existsSync(kept)) writeFileSync(kept, tree);
    assert.equal(tree, readFileSync(kept, "utf8"));
    assert.deepEqual(await finish(page), []);
  });
}

test("the first answer costs few calls and bytes", async () => {
  const page = await open("plain.html");
  await askFor(page);
  await event(page, "result");
  await page.getByRole("img").waitFor();
  const calls = relay.calls.map(({ method, path }) => `${method} ${path.split("?")[0].replace(/\/embed\/.*/, "/embed")}`).sort();
  assert.deepEqual(calls, [
    "GET /embed", "GET /v1/forms/loop-sizing", "OPTIONS /v1/drawings/plan", "OPTIONS /v1/loop-sizing", "POST /v1/drawings/plan", "POST /v1/loop-sizing",
  ]);
  const bytes = relay.calls.filter(({ path }) => path.startsWith("/v1/")).reduce((sum, call) => sum + call.bytes, 0);
  console.log(`first answer: ${calls.length} calls, ${bytes} bytes beside the script`);
  assert.ok(bytes < 60_000, `${bytes} bytes`);
  assert.deepEqual(await finish(page), []);
});
