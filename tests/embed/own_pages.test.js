/** The front page and the frame, as people meet them: in a browser, each snippet copied and run. */

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";
import { judged, launch } from "./chromium.js";

const { INSTANCE: OPEN, INSTANCE_WITH_KEYS: KEYED, PAGE_PORTS, SHOTS } = process.env;
const PAGE_KEY = "tern-island-page";
const browser = await launch();
// Any other port is nobody's.
const [shop, stranger] = await Promise.all([Number(PAGE_PORTS.split(",")[0]), 0].map(site));

after(async () => {
  await browser.close();
  for (const { server } of [shop, stranger]) {
    server.close();
    server.closeAllConnections();
  }
});

/** A site of one page, which a test writes. */
async function site(port) {
  const own = { page: "", policy: "" };
  own.server = createServer((request, response) => {
    const isPage = request.url === "/";
    const headers = isPage ? { "content-type": "text/html; charset=utf-8", "content-security-policy": own.policy } : {};
    response.writeHead(isPage ? 200 : 404, headers).end(isPage ? own.page : "");
  });
  await new Promise((resolve) => own.server.listen(port, "127.0.0.1", resolve));
  own.origin = `http://127.0.0.1:${own.server.address().port}`;
  return own;
}

/** Opens an address; `complaints` collects what a page must not have. */
async function open(address, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1100, height: 900 }, locale: "en-US", ...options });
  context.setDefaultTimeout(20_000);
  const page = await context.newPage();
  const complaints = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => complaints.push(message.text()));
  await page.addInitScript(() => {
    globalThis.told = [];
    addEventListener("message", ({ data, origin }) => globalThis.told.push({ data, origin }));
  });
  await page.goto(address);
  return { page, complaints };
}

const picture = (page, name) => SHOTS && page.screenshot({ path: join(SHOTS, `${name}.png`), fullPage: true });
const summaryOf = async (page) => JSON.parse(await page.locator("#answer").textContent());

/** Asks for another opening than the page begins with, and waits for the answer. */
async function ask(place, width) {
  const helper = place.locator("loopwright-helper");
  await helper.getByRole("textbox", { name: "Clear width" }).fill(width);
  await helper.getByRole("button", { name: "Show the loops" }).click();
  await helper.locator("figure svg").waitFor();
}

/** What a program prints, in a folder of its own. */
function run(program, argument, text, name) {
  const folder = mkdtempSync(join(tmpdir(), "snippet-"));
  try {
    const file = join(folder, name);
    writeFileSync(file, text);
    const { status, stdout, stderr } = spawnSync(program, [...argument, file], { encoding: "utf8", timeout: 60_000, cwd: folder });
    assert.equal(status, 0, `${name}: ${stdout} ${stderr}`);
    return stdout;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Runs what the page shows to copy; gives the headlines. */
async function copied(page) {
  const text = (name) => page.locator(`[data-snippet=${name}]`).textContent();
  const tsc = fileURLToPath(new URL("node_modules/.bin/tsc", import.meta.url));
  const typescript = await text("typescript");
  run(tsc, ["--noEmit", "--strict", "--target", "es2022", "--module", "es2022", "--lib", "es2022,dom", "--moduleDetection", "force"], typescript, "ask.ts");
  return {
    curl: JSON.parse(run("bash", [], await text("curl"), "ask.sh")).headline,
    typescript: run(process.execPath, [], typescript, "ask.mjs").trim(),
    python: run("python3", [], await text("python"), "ask.py").trim(),
  };
}

test("a newcomer sees an answer, asks, and finds the request behind it", async () => {
  const { page, complaints } = await open(`${OPEN}/`);
  const before = await summaryOf(page);
  assert.ok(before.lines.length >= 3, JSON.stringify(before));
  assert.deepEqual(await copied(page), { curl: before.headline, typescript: before.headline, python: before.headline });
  await ask(page, "12' 6\"");
  const after = await summaryOf(page);
  assert.notEqual(after.headline, before.headline);
  assert.deepEqual(await copied(page), { curl: after.headline, typescript: after.headline, python: after.headline });
  await picture(page, "front-asked");
  assert.deepEqual(complaints, []);
  await page.context().close();
});

for (const [language, heading] of [["en", "Which vehicle loops"], ["es", "Qué lazos"], ["fr", "Quelles boucles"]]) {
  for (const [width, colorScheme] of [[320, "dark"], [1600, "light"]]) {
    test(`the front page in ${language}, ${width} wide, ${colorScheme}`, async () => {
      const { page, complaints } = await open(`${OPEN}/?lang=${language}`, { viewport: { width, height: 800 }, colorScheme });
      await page.locator("loopwright-helper").getByRole("combobox").first().waitFor();
      assert.ok((await page.locator("h1").textContent()).includes(heading));
      assert.equal(await page.locator("[aria-current]").getAttribute("lang"), language);
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "wider than the window");
      await picture(page, `front-${language}-${width}`);
      const { violations } = await judged(page);
      assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => target)]), []);
      assert.deepEqual(complaints, []);
      await page.context().close();
    });
  }
}

test("with keys on, the front page asks with its own", async () => {
  const { page, complaints } = await open(`${KEYED}/`);
  await ask(page, "16 ft");
  assert.ok((await summaryOf(page)).headline);
  assert.match(await page.locator("[data-snippet=curl]").textContent(), /Bearer \$LOOPWRIGHT_KEY/);
  assert.deepEqual(complaints, []);
  await page.context().close();
});

test("what the front page shows to embed works on another page, pinned by its hash", async () => {
  const { page: front } = await open(`${OPEN}/`);
  const snippet = await front.locator("[data-snippet=html]").textContent();
  await front.context().close();
  shop.page = `<!doctype html><html lang="en"><title>Tern Island Boatyard</title>${snippet}</html>`;
  shop.policy = `default-src 'none'; script-src ${OPEN}; connect-src ${OPEN}; require-trusted-types-for 'script'`;
  const { page, complaints } = await open(shop.origin);
  await page.locator("loopwright-helper").getByRole("combobox").first().selectOption("slide_gate");
  await ask(page, "24 ft");
  assert.deepEqual(complaints.filter((told) => !told.includes("favicon")), []);
  shop.page = shop.page.replace(/sha384-..../, "sha384-AAAA");
  await page.reload();
  assert.equal(await page.evaluate(() => customElements.get("loopwright-helper")), undefined, "a file that is another is not run");
  await page.context().close();
});

/** A page with the frame. */
const framed = (query) => `<!doctype html><html lang="en"><title>Tern Island Boatyard</title><h1>Loops</h1>
  <iframe title="Loops for your gate" width="600" height="900" src="${KEYED}/embed/frame?${query}"></iframe></html>`;

test("a page of the key shows the frame, learns its height, gives it stock and takes its cart", async () => {
  shop.page = framed(new URLSearchParams({ "publishable-key": PAGE_KEY, "opening-width": "24 ft", barrier: "slide_gate", show: "summary drawing findings cart" }));
  shop.policy = `default-src 'none'; frame-src ${KEYED}`;
  const { page } = await open(shop.origin);
  const frame = page.frameLocator("iframe");
  await ask(frame, "20 ft");
  const told = (type) => page.waitForFunction((type) => globalThis.told.findLast(({ data }) => data.type === type), type);
  const height = await (await told("loopwright-height")).jsonValue();
  assert.ok(height.data.height > 400 && height.origin === KEYED, JSON.stringify(height));
  await frame.getByRole("button", { name: "Add to cart" }).click();
  const { data } = await (await told("loopwright-add-to-cart")).jsonValue();
  assert.ok(data.lines.length > 0 && data.lines.every(({ quantity }) => quantity > 0), JSON.stringify(data));
  await picture(page, "frame");
  await page.context().close();
});

for (const [what, place, key] of [["of another origin", stranger, PAGE_KEY], ["with a key of nobody", shop, "nobody"]]) {
  test(`a page ${what} cannot show the frame`, async () => {
    place.page = framed(new URLSearchParams({ "publishable-key": key }));
    place.policy = "";
    const { page } = await open(place.origin);
    await page.waitForLoadState("networkidle");
    assert.equal(await page.frameLocator("iframe").locator("loopwright-helper").count(), 0);
    assert.deepEqual(await page.evaluate(() => globalThis.told), []);
    await page.context().close();
  });
}
