/** One browser for all tests, and a page that notices what it must not do. */

import { launch } from "./chromium.js";
import { Relay, Shop } from "./site.js";

// Two files of tests run at once, each with pages of its own origin.
const PORT = Number(process.env.PAGE_PORTS.split(",")[process.argv[1].includes("people") ? 0 : 1]);

export const relay = await Relay.start(process.env.INSTANCE, process.env.INSTANCE_WITH_KEYS);
export const shop = await Shop.start(PORT, relay);
export const browser = await launch();

export async function closeAll() {
  await browser.close();
  for (const server of [relay.server, shop.server]) {
    server.close();
    server.closeAllConnections();
  }
}

/** What a page has done that it must not: violations of its policy, errors, messages in the console. */
const complaints = new WeakMap();
export const complaintsOf = (page) => complaints.get(page);

/**
 * Opens a page of the shop in a context of its own.
 * @param {string} path
 * @param {object} options Of the context. `query` fills in the page, `before` runs in it first of all, `fault` is that of the relay, `keys`
 * says whether the service asks for keys, `clock` whether the test may stop the time of the page.
 */
export async function open(path = "plain.html", { before, fault, keys = false, clock = false, query = {}, ...options } = {}) {
  relay.reset();
  if (keys) relay.askForKeys();
  relay.fault = fault;
  shop.reports = [];
  const context = await browser.newContext({ viewport: { width: 390, height: 800 }, locale: "en-US", ...options });
  context.setDefaultTimeout(10_000);
  const page = await context.newPage();
  const told = [];
  complaints.set(page, told);
  page.on("pageerror", (error) => told.push(`error: ${error.message}`));
  page.on("console", (message) => {
    // A refused or failed request is told in the console by the browser itself.
    if (!message.text().startsWith("Failed to load resource")) told.push(`console: ${message.text()}`);
  });
  await page.addInitScript(() => {
    globalThis.seen = [];
    globalThis.violations = [];
    document.addEventListener("securitypolicyviolation", (event) =>
      globalThis.violations.push(`${event.violatedDirective} ${event.blockedURI} ${event.sample}`));
    for (const name of ["ready", "input", "result", "error", "add-to-cart"]) {
      addEventListener(`loopwright-${name}`, (event) => globalThis.seen.push({ name, detail: event.detail }));
    }
  });
  if (before) await page.addInitScript(before);
  if (clock) await page.clock.install();
  await page.goto(`${shop.origin}/${path}?${new URLSearchParams(query)}`);
  return page;
}

/** Ends a test's page, and gives what it must not have done. */
export async function finish(page) {
  const violations = await page.evaluate(() => globalThis.violations);
  await page.context().close();
  return [...complaints.get(page), ...violations, ...shop.reports];
}

/** Waits for an event of a helper. */
export async function event(page, name, count = 1) {
  const handle = await page.waitForFunction(
    ([name, count]) => {
      const found = globalThis.seen.filter((one) => one.name === name);
      return found.length >= count && found.at(-1);
    }, [name, count]);
  return (await handle.jsonValue()).detail;
}

/** What is written on a page, by language. */
const SAID = {
  en: { width: "Clear width", barrier: "Kind of gate", ask: "Show the loops", add: "Add to cart" },
  es: { width: "Ancho libre", barrier: "Tipo de portón", ask: "Ver los lazos", add: "Agregar al carrito" },
  fr: { width: "Largeur libre", barrier: "Type de portail", ask: "Voir les boucles", add: "Ajouter au panier" },
};

/** The controls of a helper. @param {import("playwright-core").Page} page */
export function controls(page, language = "en", helper = page.locator("loopwright-helper")) {
  const said = SAID[language];
  return {
    width: helper.getByRole("textbox", { name: said.width }),
    barrier: helper.getByRole("combobox", { name: said.barrier }),
    ask: helper.getByRole("button", { name: said.ask }),
    add: helper.getByRole("button", { name: said.add }),
    error: (name) => helper.locator(`#${name}-error`),
  };
}

/** Enters a gate and asks for its loops. */
export async function askFor(page, { width = "24 ft", barrier = "slide_gate", language = "en" } = {}) {
  await event(page, "ready");
  const { width: entry, barrier: menu, ask } = controls(page, language);
  await entry.fill(width);
  await menu.selectOption(barrier);
  await ask.click();
}

/** From here on the page's time goes on only as it is told. */
export const stopTime = (page) => page.clock.pauseAt(Date.now() + 3_600_000);
