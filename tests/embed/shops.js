/**
 * The pages of the invented Tern Island Boatyard, plain and React, as visitors have them: languages, systems, light and dark, forced
 * colours, from 320 to 1,600 pixels, at 200 % zoom. With SHOTS they are kept as pictures for a look.
 */

import assert from "node:assert/strict";
import { test } from "node:test";
import { controls, event, finish, open } from "./browser.js";

/** How a page is looked at: width, and what the device says. A zoom of 200 % is half the width at twice the pixels. */
const LOOKS = [
  ["320-light", 320, { colorScheme: "light" }],
  ["390-dark", 390, { colorScheme: "dark" }],
  ["640-zoomed", 640, { colorScheme: "light" }],
  ["768-light", 768, { colorScheme: "light" }],
  ["1280-dark", 1280, { colorScheme: "dark" }],
  ["1600-light", 1600, { colorScheme: "light" }],
  ["1280-forced", 1280, { forcedColors: "active", colorScheme: "dark" }],
  ["390-forced", 390, { forcedColors: "active", colorScheme: "light" }],
];
const GATES = { en: "24 ft", es: "7.2 m", fr: "7,2 m" };

/** What sticks out to the side, and texts whose colour is close to their surface. */
function faults() {
  const helper = document.querySelector("loopwright-helper");
  const root = helper.shadowRoot;
  const wide = [...root.querySelectorAll(".all, .all *")].filter((one) => {
    const box = one.getBoundingClientRect();
    return box.width > 0 && !one.matches(".quiet, option") && (box.right > innerWidth + 1 || box.left < -1);
  });
  const numbers = (colour) => colour.match(/[\d.]+/g).slice(0, 3).map(Number);
  const far = (one, other) => Math.max(...numbers(one).map((part, index) => Math.abs(part - numbers(other)[index])));
  const paper = getComputedStyle(root.querySelector("svg .paper")).fill;
  const faint = [...root.querySelectorAll("svg text")].filter((text) => far(getComputedStyle(text).fill, paper) < 100);
  return {
    scrolls: document.documentElement.scrollWidth > innerWidth,
    wide: wide.map((one) => `${one.tagName}.${one.getAttribute("class")} ${one.textContent.slice(0, 40)}`),
    faint: faint.map((text) => text.textContent),
  };
}

for (const kind of ["boatyard", "react"]) {
  for (const language of ["en", "es", "fr"]) {
    test(`the shop's page, ${kind}, ${language}`, async () => {
      const page = await open(`${kind}.html`, { query: { lang: language } });
      await event(page, "ready");
      const { width, barrier, ask, add } = controls(page, language);
      // Key by key: the page may render anew with each, and must not take the field away.
      await width.pressSequentially(GATES[language]);
      await barrier.selectOption("slide_gate");
      await ask.click();
      const { summary, report } = await event(page, "result");
      assert.equal(report.inputs.opening.width.m > 7, true);
      assert.equal(summary.lines.length, 3);
      if (kind === "react") await page.locator("#headline").getByText(summary.headline).waitFor();
      await page.getByRole("img").waitFor();
      await add.click();
      await page.locator("#basket li").first().waitFor();
      const basket = await page.locator("#basket li").allTextContents();
      assert.deepEqual(basket, [...summary.cart.map(({ sku, quantity }) => `${quantity} × ${sku}`),
        ...summary.to_order.map(({ specification, quantity }) => `${quantity} × ${specification}`)]);
      assert.ok(basket.length);
      assert.equal(await page.evaluate(() => globalThis.seen.filter(({ name }) => name === "result").length), 1, "asked again and again");
      for (const [name, wide, media] of LOOKS) {
        await page.emulateMedia({ forcedColors: "none", ...media });
        await page.setViewportSize({ width: wide, height: 900 });
        assert.deepEqual(await page.evaluate(faults), { scrolls: false, wide: [], faint: [] }, name);
        if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/${kind}-${language}-${name}.png`, fullPage: true });
      }
      assert.deepEqual(await finish(page), []);
    });
  }
}

test("the drawing follows the shop's colours", async () => {
  const page = await open("boatyard.html");
  await event(page, "ready");
  const { width, barrier, ask } = controls(page);
  await width.fill("24 ft");
  await barrier.selectOption("slide_gate");
  await ask.click();
  await page.getByRole("img").waitFor();
  const colours = () => page.locator("loopwright-helper").evaluate((node) => ["wire", "paper"].map((name) => {
    const { stroke, fill } = getComputedStyle(node.shadowRoot.querySelector(`svg .${name}`));
    return name === "wire" ? stroke : fill;
  }));
  await page.emulateMedia({ colorScheme: "light" });
  assert.deepEqual(await colours(), ["rgb(0, 89, 79)", "rgb(251, 250, 247)"]);
  await page.emulateMedia({ colorScheme: "dark" });
  assert.deepEqual(await colours(), ["rgb(111, 208, 192)", "rgb(26, 29, 28)"]);
  assert.deepEqual(await finish(page), []);
});

test("a theme that the page sets holds over that of the device", async () => {
  const page = await open("plain.html", { query: { attributes: 'theme="dark"' }, colorScheme: "light" });
  await event(page, "ready");
  const surface = () => page.locator("loopwright-helper").evaluate((node) => getComputedStyle(node.shadowRoot.querySelector(".all")).backgroundColor);
  assert.equal(await surface(), "rgb(20, 23, 27)");
  await page.locator("loopwright-helper").evaluate((node) => (node.theme = "light"));
  await page.emulateMedia({ colorScheme: "dark" });
  assert.equal(await surface(), "rgb(255, 255, 255)");
  assert.deepEqual(await finish(page), []);
});
