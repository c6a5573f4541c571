/** Pages as they are: two helpers, shadow roots, properties set too early, elements that come and go. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { askFor, controls, event, finish, open, relay } from "./browser.js";
import { SCRIPT } from "./site.js";
import { askForStopped, STOPPED } from "./states.js";

const SHELF = [
  { sku: "TIB-620", along_travel: "6 ft", across_lane: "20 ft", lead_in_length: "60 ft", turns: 2 },
  { sku: "TIB-608", along_travel: "6 ft", across_lane: "8 ft", lead_in_length: "60 ft", turns: 3 },
];

test("two helpers on a page, each in its language, know nothing of each other", async () => {
  const page = await open("two.html");
  await event(page, "ready", 2);
  const [one, two] = [page.locator("#one"), page.locator("#two")];
  for (const [helper, language, width] of [[one, "en", "24 ft"], [two, "fr", "3,6 m"]]) {
    const { width: entry, barrier, ask } = controls(page, language, helper);
    await entry.fill(width);
    await barrier.selectOption("slide_gate");
    await ask.click();
    await helper.getByRole("img").waitFor();
  }
  assert.match(await one.locator("h3").first().textContent(), /20 ft/);
  assert.match(await two.locator("h3").first().textContent(), /boucles/);
  assert.equal(await one.evaluate((node) => node.value.opening.width), "24 ft");
  assert.deepEqual(await finish(page), []);
});

test("inside another shadow root, with the language of its host, and events that come out", async () => {
  const page = await open("shadow.html");
  await event(page, "ready");
  const { width, barrier, ask } = controls(page, "es");
  await width.fill("24 ft");
  await barrier.selectOption("slide_gate");
  await ask.click();
  await page.getByRole("img").waitFor();
  const target = await page.evaluate(() => new Promise((resolve) => {
    document.addEventListener("loopwright-add-to-cart", (event) => resolve(event.target.localName), { once: true });
    document.querySelector("tern-island").shadowRoot.querySelector("loopwright-helper").shadowRoot.querySelector(".of-answer").click();
  }));
  assert.equal(target, "tern-island");
  assert.deepEqual(await finish(page), []);
});

test("the script twice on a page, from two places, is no error", async () => {
  const page = await open("plain.html");
  await event(page, "ready");
  await page.evaluate((src) => new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.type = "module";
    script.onload = resolve;
    script.onerror = reject;
    // Under Trusted Types a page adds scripts in its markup; a test imports instead.
    import(src).then(resolve, reject);
  }), relay.origin + SCRIPT.replace("0.0.0", "0.0.1"));
  await askFor(page);
  await event(page, "result");
  assert.deepEqual(await finish(page), []);
});

test("properties that are set before the element is known hold", async () => {
  const page = await open("plain.html", { before: () => {
    document.addEventListener("readystatechange", () => {
      const helper = document.querySelector("loopwright-helper");
      if (!helper || customElements.get("loopwright-helper")) return;
      Object.assign(helper, { value: { opening: { width: "12 ft", barrier: "barrier_arm" } }, show: "summary", maxFindings: 0, lang: "fr",
        messages: { fr: { title: "Chez Tern Island" } } });
    }, { once: true });
  } });
  await event(page, "ready");
  await page.getByRole("heading", { name: "Chez Tern Island" }).waitFor();
  assert.equal(await controls(page, "fr").width.inputValue(), "12 ft");
  assert.equal(await page.locator("loopwright-helper").evaluate((node) => Object.hasOwn(node, "value")), false);
  assert.equal(await page.locator("loopwright-helper").getAttribute("show"), "summary");
  assert.deepEqual(await finish(page), []);
});

test("a page that hands back late what it was told takes nothing away", async () => {
  const page = await open();
  await event(page, "ready");
  const { width, barrier } = controls(page);
  await page.evaluate(() => addEventListener("loopwright-input", ({ target, detail }) => (globalThis.late ??= [target, detail.value])));
  await width.pressSequentially("24 ft");
  await barrier.selectOption("slide_gate");
  const [echoed, replaced] = await page.evaluate(async () => {
    const [helper, first] = globalThis.late;
    helper.value = first;
    const echoed = helper.value;
    helper.value = { opening: { width: "12 ft" } };
    return [echoed, helper.value];
  });
  assert.deepEqual(echoed, { opening: { width: "24 ft", barrier: "slide_gate" } });
  assert.deepEqual(replaced, { opening: { width: "12 ft" } });
  await page.waitForFunction(() => document.querySelector("loopwright-helper").shadowRoot.querySelector("#opening-width").value === "12 ft");
  assert.equal(await barrier.inputValue(), "");
  assert.deepEqual(await finish(page), []);
});

test("a form that is made anew leaves who is typing where they were", async () => {
  const page = await open();
  await event(page, "ready");
  const { width } = controls(page);
  await width.pressSequentially("24 ");
  await page.evaluate(async () => {
    const helper = document.querySelector("loopwright-helper");
    helper.messages = { title: "Our gates" };
    helper.defaults = { surface: "gravel" };
    await new Promise((resolve) => requestAnimationFrame(resolve));
  });
  await page.getByRole("heading", { name: "Our gates" }).waitFor();
  await page.keyboard.type("ft");
  assert.equal(await width.inputValue(), "24 ft");
  assert.deepEqual(await finish(page), []);
});

test("moved while it waits, it goes on; removed, it gives up; put back, it asks again", async () => {
  const page = await open();
  const { held, release } = relay.hold();
  relay.fault = async (call) => void (call.method === "POST" && (await held));
  await askFor(page);
  await page.getByRole("button", { name: "Calculating" }).waitFor();
  await page.evaluate(() => document.body.append(document.querySelector("loopwright-helper")));
  release();
  await event(page, "result");
  assert.equal(relay.calls.filter(({ method, path }) => method === "POST" && path.includes("sizing")).length, 1);

  const second = relay.hold();
  relay.fault = async (call) => void (call.method === "POST" && (await second.held));
  await controls(page).width.fill("12 ft");
  await controls(page).width.blur();
  await page.getByRole("button", { name: "Calculating" }).waitFor();
  const failed = page.waitForEvent("requestfailed");
  await page.evaluate(() => {
    globalThis.kept = document.querySelector("loopwright-helper");
    globalThis.kept.remove();
  });
  await failed;
  relay.fault = undefined;
  second.release();
  await page.evaluate(() => document.querySelector("main").append(globalThis.kept));
  const { report } = await event(page, "result", 2);
  assert.equal(report.inputs.opening.width.ft, 12);
  assert.deepEqual(await finish(page), []);
});

test("the language follows the page, and the answer with it", async () => {
  const page = await open();
  await askFor(page);
  await event(page, "result");
  await page.evaluate(() => (document.documentElement.lang = "es-MX"));
  const { summary } = await event(page, "result", 2);
  assert.match(summary.headline, /lazos/);
  await controls(page, "es").add.waitFor();
  assert.equal(await controls(page, "es").width.inputValue(), "24 ft");
  await page.locator("loopwright-helper").evaluate((node) => (node.lang = "fr-CA"));
  assert.match((await event(page, "result", 3)).summary.headline, /boucles/);
  await page.locator("loopwright-helper").evaluate((node) => (node.lang = "de"));
  assert.match((await event(page, "result", 4)).summary.headline, /loops/);
  assert.deepEqual(await finish(page), []);
});

test("stock gives numbers of the shop: a list, a file, a question; what fails there is no customer's trouble", async () => {
  const page = await open("plain.html", { query: { attributes: 'stock-src="/stock.json"' } });
  await askFor(page);
  await controls(page).add.click();
  const { lines } = await event(page, "add-to-cart");
  assert.deepEqual(lines, [{ sku: "TIB-620", quantity: 3, marks: ["A", "B", "C"] }]);

  await page.evaluate((stock) => {
    document.querySelector("loopwright-helper").resolveStock = async (request) => (globalThis.asked = request, stock);
  }, SHELF.slice(1));
  await controls(page).width.fill("12 ft");
  await controls(page).width.blur();
  assert.deepEqual((await event(page, "result", 2)).summary.cart, [{ sku: "TIB-608", quantity: 3, marks: ["A", "B", "C"] }]);
  assert.deepEqual(await page.evaluate(() => globalThis.asked), { opening: { width: "12 ft", barrier: "slide_gate" } });

  await page.evaluate(() => (document.querySelector("loopwright-helper").resolveStock = () => Promise.reject(new Error("shelf closed"))));
  await controls(page).width.fill("13 ft");
  await controls(page).width.blur();
  assert.deepEqual((await event(page, "result", 3)).summary.cart, []);
  assert.equal((await event(page, "error")).problem.code, "stock_unavailable");

  await page.evaluate(() => Object.assign(document.querySelector("loopwright-helper"), { resolveStock: undefined, stock: [{ sku: "X" }] }));
  await event(page, "result", 4);
  assert.match((await event(page, "error", 2)).problem.errors[0].pointer, /^#.stock.0./);
  assert.equal(await page.locator(".trouble").textContent(), "");
  assert.deepEqual(await finish(page), []);
});

test("a cart that the page takes over says nothing by itself", async () => {
  const page = await open();
  await askFor(page);
  await event(page, "result");
  await page.evaluate(() => addEventListener("loopwright-add-to-cart", (event) => event.preventDefault()));
  await controls(page).add.click();
  await event(page, "add-to-cart");
  assert.equal(await page.locator(".added").textContent(), "");
  assert.deepEqual(await finish(page), []);
});

test("slots hold the page's own words and button", async () => {
  const inside = ["title", "intro", "disclaimer", "footer"].map((name) => `<p slot="${name}">our ${name}</p>`).join("")
    + '<p slot="no-match">call us</p><button slot="cart-button">Into our basket</button>';
  const page = await open("plain.html", { query: { inside } });
  await page.evaluate((stock) => (document.querySelector("loopwright-helper").stock = stock), [{ ...SHELF[0], across_lane: "3 ft", lead_in_length: "9 ft" }]);
  await askFor(page);
  await event(page, "result");
  for (const words of ["our title", "our intro", "our disclaimer", "our footer", "call us"]) await page.getByText(words).waitFor();
  await page.getByRole("button", { name: "Into our basket" }).click();
  assert.equal((await event(page, "add-to-cart")).lines.length, 1);
  assert.deepEqual(await finish(page), []);
});

test("no page can hide a stop, nor that a loop protects nobody", async () => {
  const page = await open("hiding.html");
  await event(page, "ready");
  await page.evaluate((value) => {
    const helper = document.querySelector("loopwright-helper");
    helper.messages = { nobody: "Safe for all.", stop: "Fine", notYet: "" };
    helper.value = value;
    return helper.ask();
  }, STOPPED);
  await page.getByText("Do not build it like this").waitFor();
  await page.getByText("Do not saw a post-tensioned slab").waitFor();
  await page.getByText("it protects nobody").waitFor();
  assert.equal(await page.getByText("Safe for all").count(), 0);
  assert.equal(await page.locator(".of-answer").count(), 0, "a job with a stop goes into no cart");
  const shown = await page.locator("loopwright-helper").evaluate((node) => ["alarm", "law"].map((name) => {
    const one = node.shadowRoot.querySelector(`.${name}`);
    const { display, visibility, opacity, fontSize } = getComputedStyle(one);
    return [display, visibility, opacity, parseFloat(fontSize) >= 15, one.getBoundingClientRect().height > 20].join(" ");
  }));
  assert.deepEqual(shown, ["block visible 1 true true", "block visible 1 true true"]);
  assert.deepEqual(await finish(page), []);
});

test("a job with a stop goes into no cart, with the page's own button neither", async () => {
  const page = await open("plain.html", { query: { inside: '<button slot="cart-button">Into our basket</button>' } });
  await askForStopped(page);
  await page.getByText("Not for the cart yet").waitFor();
  assert.equal(await page.getByRole("button", { name: "Into our basket" }).isVisible(), false);
  assert.equal(await controls(page).add.count(), 0);
  assert.deepEqual(await finish(page), []);
});

test("a page that reads from the right keeps its own direction, and the words here theirs", async () => {
  const page = await open("plain.html", { query: { lang: "ar", inside: '<p slot="intro">مرحبا</p>' } });
  await page.evaluate(() => (document.documentElement.dir = "rtl"));
  await askFor(page);
  await event(page, "result");
  const directions = await page.locator("loopwright-helper").evaluate((node) => [
    getComputedStyle(node.querySelector("[slot]")).direction, getComputedStyle(node.shadowRoot.querySelector("form")).direction,
    node.shadowRoot.querySelector(".all").scrollWidth <= node.getBoundingClientRect().width,
  ]);
  assert.deepEqual(directions, ["rtl", "ltr", true]);
  assert.deepEqual(await finish(page), []);
});
