/** What people enter, and how it is refused. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { askFor, controls, event, finish, open, relay } from "./browser.js";

const sized = () => relay.calls.filter(({ method, path }) => method === "POST" && path.startsWith("/v1/loop-sizing"));
const MINE = (page) => page.evaluate(() => document.querySelector("loopwright-helper").value);

test("a bare number gets no unit until the person has chosen one", async () => {
  const page = await open();
  await event(page, "ready");
  const { width, barrier, error } = controls(page);
  await width.fill("24");
  await width.blur();
  await barrier.selectOption("slide_gate");
  await error("opening-width").getByText("Which unit?").waitFor();
  assert.equal(await width.inputValue(), "24");
  assert.deepEqual(await error("opening-width").getByRole("button").allTextContents(), ["Use 24 ft", "Use 24 m"]);
  assert.deepEqual(await page.getByRole("radio", { checked: true }).count(), 0);
  assert.equal(sized().length, 0, "it asked what it could tell by itself");
  await page.getByRole("button", { name: "Use 24 m" }).click();
  assert.equal(await width.inputValue(), "24 m");
  assert.equal(await page.getByRole("radiogroup", { name: "Clear width" }).getByRole("radio", { name: "m" }).isChecked(), true);
  // The choice holds from then on, and is to be seen.
  await width.fill("7.5");
  await width.blur();
  assert.equal(await width.inputValue(), "7.5 m");
  assert.deepEqual(await finish(page), []);
});

test("the unit that the page has chosen is shown, and kept until the person chooses", async () => {
  const page = await open("plain.html", { query: { attributes: 'units="us"' } });
  await event(page, "ready");
  const { width } = controls(page);
  const units = page.getByRole("radiogroup", { name: "Clear width" });
  assert.equal(await units.getByRole("radio", { name: "ft" }).isChecked(), true);
  await width.fill("24 1/2");
  await width.blur();
  assert.equal(await width.inputValue(), "24 1/2 ft");
  await width.fill("7.5 m");
  assert.equal(await units.getByRole("radio", { name: "m" }).isChecked(), true, "the toggle says what is written");
  await units.getByRole("radio", { name: "ft" }).click();
  assert.equal(await width.inputValue(), "7.5 ft");
  assert.deepEqual(await finish(page), []);
});

test("a field that was left is checked by the service, in its words, with a suggestion to press", async () => {
  const page = await open("plain.html", { query: { lang: "es" } });
  await event(page, "ready");
  const { width, barrier, error } = controls(page, "es");
  await width.fill("7,200 mm");
  await width.blur();
  const told = error("opening-width");
  await told.getByText("tiene una coma en su número").waitFor();
  assert.equal(await width.getAttribute("aria-invalid"), "true");
  assert.equal(await barrier.getAttribute("aria-invalid"), null, "what was not yet reached is left in peace");
  const described = (await width.getAttribute("aria-describedby")).split(" ");
  assert.ok(described.includes("opening-width-error"));
  await told.getByRole("button", { name: "Usar 7200 mm" }).click();
  assert.equal(await width.inputValue(), "7200 mm");
  assert.equal(await told.textContent(), "");
  assert.equal(await width.getAttribute("aria-invalid"), null);
  assert.deepEqual(await finish(page), []);
});

test("what is surely in order is not asked about", async () => {
  const page = await open();
  await event(page, "ready");
  const { width, barrier } = controls(page);
  for (const text of ["24 ft", "7.2 m", "7,2 m"]) {
    await width.fill(text);
    await width.blur();
  }
  await barrier.selectOption("slide_gate");
  // What the helper cannot tell is asked about, and proves that asking is seen here.
  await width.fill("24' 6");
  const [asked] = await Promise.all([page.waitForRequest((request) => request.url().includes("/v1/loop-sizing")), width.blur()]);
  assert.equal(JSON.parse(asked.postData()).opening.width, "24' 6");
  await asked.response();
  assert.equal(sized().length, 1);
  assert.deepEqual(await finish(page), []);
});

test("the answer to a check is the answer, if nothing has changed since", async () => {
  const page = await open();
  await event(page, "ready");
  const { width, barrier, ask } = controls(page);
  await barrier.selectOption("slide_gate");
  await width.fill("24' 6");
  const answered = page.waitForResponse((response) => response.url().includes("/v1/loop-sizing") && response.request().method() === "POST");
  await width.blur();
  await (await answered).finished();
  await ask.click();
  await event(page, "result");
  assert.equal(sized().length, 1);
  assert.deepEqual(await finish(page), []);
});

test("the focus goes to the first error, and the number of errors is said", async () => {
  const page = await open();
  await event(page, "ready");
  await controls(page).ask.click();
  await page.getByRole("status").getByText("2 entries need attention.").waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.shadowRoot.activeElement.id), "opening-width");
  await controls(page).width.fill("300 ft");
  await controls(page).barrier.selectOption("slide_gate");
  await controls(page).ask.click();
  await page.getByText("lies outside 3 ft to 200 ft").first().waitFor();
  await page.getByRole("status").getByText("1 entry needs attention.").waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.shadowRoot.activeElement.id), "opening-width");
  assert.deepEqual(await finish(page), []);
});

test("no refusal shows a pointer or a name of the contract", async () => {
  const page = await open("plain.html", { query: { attributes: 'fields="width barrier lead_in/length"' } });
  await event(page, "ready");
  await page.evaluate(() => (document.querySelector("loopwright-helper").defaults = { slab: { thickness: "6" }, wire: { gauges: "14 AWG" } }));
  await askFor(page, { width: "x" });
  await event(page, "error");
  await page.locator("#lead_in-length").fill("-3 ft");
  await page.locator("form .main").click();
  await event(page, "error", 2);
  const told = (await page.locator(".error").allInnerTexts()).join(" ");
  assert.match(told, /number/);
  assert.match(told, /Thickness of the slab: /, "a field that is not shown is told by its label");
  assert.doesNotMatch(told, /#|_|\/opening|gauges/);
  assert.deepEqual(await finish(page), []);
});

test("the menu of one field follows another, and nothing that was only shown is sent", async () => {
  const page = await open("plain.html", { query: { attributes: 'fields="usual"' } });
  await event(page, "ready");
  const ticked = (name) => page.locator(`[id^=${name}-]:checked`).evaluateAll((boxes) => boxes.map(({ value }) => value));
  assert.deepEqual(await ticked("vehicles"), ["passenger_car", "high_bed_truck"]);
  assert.deepEqual(await ticked("roles"), []);
  await controls(page).barrier.selectOption("barrier_arm");
  assert.deepEqual((await ticked("roles")).sort(), ["arming", "closing"]);
  await askFor(page);
  await event(page, "result");
  assert.deepEqual(await MINE(page), { opening: { width: "24 ft", barrier: "slide_gate" } });
  await page.locator("#vehicles-small_motorcycle").check();
  await event(page, "result", 2);
  assert.deepEqual((await MINE(page)).vehicles, ["passenger_car", "high_bed_truck", "small_motorcycle"]);
  // Without any the usual ones hold, and are seen to.
  for (const code of (await ticked("vehicles"))) await page.locator(`#vehicles-${code}`).uncheck();
  assert.deepEqual(await ticked("vehicles"), ["passenger_car", "high_bed_truck"]);
  assert.deepEqual(await finish(page), []);
});

test("a clerk's many fields are folded by their sections, and a refusal opens its section", async () => {
  const page = await open("plain.html", { query: { attributes: 'fields="all"' } });
  await askFor(page);
  await event(page, "result");
  const number = page.locator("#detector-quality_factor_min");
  assert.equal(await number.isVisible(), false);
  await page.locator("summary", { hasText: "Detector unit" }).click();
  await number.fill("2,5");
  await number.blur();
  assert.equal((await event(page, "result", 2)).report.inputs.detector.quality_factor_min, 2.5);
  await number.fill("some");
  await page.locator("summary", { hasText: "Detector unit" }).click();
  await page.locator("form .main").click();
  await page.getByText(/Write a number from/).waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.shadowRoot.activeElement.id), "detector-quality_factor_min");
  assert.deepEqual(await finish(page), []);
});

test("fields are those that are named, in their order, and values go where they are entered", async () => {
  const page = await open("plain.html", { query: { attributes: 'fields="barrier #/opening/width lead_in/length unknown surface" opening-width="12 ft"' } });
  await event(page, "ready");
  const named = await page.locator("loopwright-helper .field").locator("input[type=text], select").evaluateAll((all) => all.map(({ id }) => id));
  assert.deepEqual(named, ["opening-barrier", "opening-width", "lead_in-length", "surface"]);
  assert.equal(await controls(page).width.inputValue(), "12 ft");
  await page.evaluate(() => (document.querySelector("loopwright-helper").value = { opening: { barrier: "barrier_arm" }, surface: "gravel" }));
  await page.locator("#surface").evaluate((menu) => menu.value === "gravel");
  await page.evaluate(() => document.querySelector("loopwright-helper").ask());
  const { report } = await event(page, "result");
  assert.equal(report.inputs.opening.barrier, "barrier_arm");
  assert.equal(report.inputs.surface, "gravel");
  assert.deepEqual(await finish(page), []);
});

test("an attribute that the page changes holds over what was entered before", async () => {
  const page = await open();
  await askFor(page);
  await event(page, "result");
  await page.evaluate(() => document.querySelector("loopwright-helper").setAttribute("opening-width", "12 ft"));
  const { report } = await event(page, "result", 2);
  assert.equal(report.inputs.opening.width.ft, 12);
  assert.equal(await controls(page).width.inputValue(), "12 ft");
  assert.deepEqual(await finish(page), []);
});
