/** Networks and services that fail, and what is said then. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { askFor, controls, event, finish, open, relay, stopTime } from "./browser.js";

const isSizing = (call) => call.path.startsWith("/v1/loop-sizing");
const posts = () => relay.calls.filter((call) => call.method === "POST" && isSizing(call));

/** A problem instead of an answer, `times` times. */
const problem = (status, { code = "", headers = {}, times = Infinity } = {}) => {
  let left = times;
  return (call, response, cors) => {
    if (!isSizing(call) || left <= 0) return false;
    left -= 1;
    const body = JSON.stringify({ type: "about:blank", title: "", status, code, detail: "", errors: [], request_id: "of-the-relay" });
    response.writeHead(status, { ...cors, "content-type": "application/problem+json", ...headers }).end(body);
    return true;
  };
};

/** A page with an answer, from which something goes wrong. */
async function answered(options) {
  const page = await open("plain.html", options);
  await askFor(page);
  await event(page, "result");
  await page.getByRole("img").waitFor();
  return page;
}

async function change(page, width = "12 ft") {
  await controls(page).width.fill(width);
  await controls(page).width.blur();
}

/** The last answer stays, says that it is the last one, and does not go into a cart. */
async function keepsTheLast(page) {
  await page.getByRole("heading", { name: "3 loops of 6 x 20 ft" }).waitFor();
  await page.getByText("This answer is for what you entered before.").waitFor();
  assert.equal(await controls(page).add.isDisabled(), true);
}

const trouble = (page, words) => page.locator(".trouble").getByText(words).waitFor();

for (const status of [429, 503]) {
  test(`a ${status} is asked once more, after the time that the service says`, async () => {
    const page = await open();
    relay.fault = problem(status, { headers: { "retry-after": "1" }, times: 1 });
    await askFor(page);
    const { summary } = await event(page, "result");
    assert.equal(summary.lines.length, 3);
    assert.equal(posts().length, 2);
    assert.deepEqual(await finish(page), []);
  });
}

test("a service that stays busy is not asked a third time, and the last answer stays", async () => {
  const page = await answered();
  const before = posts().length;
  relay.fault = problem(503, { code: "overloaded", headers: { "retry-after": "0" } });
  await change(page);
  await trouble(page, "too many questions");
  assert.equal(posts().length - before, 2);
  assert.equal((await event(page, "error")).problem.code, "overloaded");
  await keepsTheLast(page);
  relay.fault = undefined;
  await page.getByRole("button", { name: "Try again" }).click();
  await page.getByText("6 x 8 ft").first().waitFor();
  assert.equal(await page.locator(".trouble").textContent(), "");
  assert.deepEqual(await finish(page), []);
});

test("a time that nobody would wait is not waited", async () => {
  const page = await open();
  relay.fault = problem(429, { headers: { "retry-after": "60" } });
  await askFor(page);
  await trouble(page, "too many questions");
  assert.equal(posts().length, 1);
  assert.deepEqual(await finish(page), []);
});

test("after eight seconds without an answer it says so, and can be asked again", async () => {
  const page = await open("plain.html", { clock: true });
  await event(page, "ready");
  const { width, barrier, ask } = controls(page);
  await width.fill("24 ft");
  await barrier.selectOption("slide_gate");
  const { held } = relay.hold();
  relay.fault = async (call) => void (call.method === "POST" && (await held));
  await stopTime(page);
  await ask.click();
  await page.getByRole("button", { name: "Calculating" }).waitFor();
  await page.clock.runFor(7_900);
  assert.equal(await page.locator(".trouble").textContent(), "");
  await page.clock.runFor(200);
  await trouble(page, "takes too long");
  assert.equal((await event(page, "error")).problem.code, "timeout");
  relay.reset();
  await page.getByRole("button", { name: "Try again" }).click();
  await event(page, "result");
  assert.deepEqual(await finish(page), []);
});

test("a connection that breaks is told, and the last answer stays", async () => {
  const page = await answered();
  relay.fault = (call, response) => isSizing(call) && Boolean(response.destroy());
  await change(page);
  await trouble(page, "cannot be reached");
  assert.equal((await event(page, "error")).problem.code, "unreachable");
  await keepsTheLast(page);
  assert.deepEqual(await finish(page), []);
});

test("offline is said, and with the line the answer comes by itself", async () => {
  const page = await answered();
  await page.context().setOffline(true);
  await trouble(page, "You are offline.");
  await change(page);
  await event(page, "error");
  await keepsTheLast(page);
  await page.context().setOffline(false);
  const { report } = await event(page, "result", 2);
  assert.equal(report.inputs.opening.width.ft, 12);
  assert.equal(await page.locator(".trouble").textContent(), "");
  assert.deepEqual(await finish(page), []);
});

test("without its form it says what is the matter, and gets it when asked again", async () => {
  const page = await open("plain.html", { fault: (call, response) => call.path.startsWith("/v1/forms") && Boolean(response.destroy()) });
  await trouble(page, "cannot be reached");
  await page.getByText("it protects nobody").waitFor();
  relay.fault = undefined;
  await page.getByRole("button", { name: "Try again" }).click();
  await event(page, "ready");
  await controls(page).width.waitFor();
  assert.deepEqual(await finish(page), []);
});

test("a publishable key is good on its page, for loops, picture and sheet", async () => {
  const attributes = 'publishable-key="tern-island-page" show="summary drawing sheet"';
  const page = await open("plain.html", { query: { attributes }, keys: true });
  await askFor(page);
  await event(page, "result");
  await page.getByRole("img").waitFor();
  const [sheet] = await Promise.all([page.waitForEvent("popup"), page.getByRole("button", { name: "Job sheet" }).click()]);
  await sheet.getByRole("heading", { level: 1 }).waitFor();
  assert.equal(posts()[0].authorization, "Bearer tern-island-page");
  // Forms need no key, and a key would cost a question about it beforehand.
  assert.equal(relay.calls.find(({ path }) => path.startsWith("/v1/forms")).authorization, undefined);
  assert.deepEqual(await finish(page), []);
});

for (const [key, status, code] of [["", 401, "unauthorized"], ["tern-island-elsewhere", 403, "key_not_for_here"]]) {
  test(`a key that is not good here: ${code} for the shop's owner, plain words for the visitor`, async () => {
    const page = await open("plain.html", { query: { attributes: `publishable-key="${key}"` }, keys: true });
    await askFor(page);
    await trouble(page, "Please tell the shop.");
    const { problem } = await event(page, "error");
    assert.deepEqual([problem.status, problem.code], [status, code]);
    assert.doesNotMatch(await page.locator(".trouble").textContent(), /key|origin|40[13]/);
    assert.deepEqual(await finish(page), []);
  });
}

test("an answer that comes too late is never shown", async () => {
  const page = await answered();
  const { held, release } = relay.hold();
  relay.fault = async (call) => void (call.method === "POST" && call.body.includes("14 ft") && (await held));
  await change(page, "14 ft");
  await page.getByRole("button", { name: "Calculating" }).waitFor();
  const failed = [];
  page.on("requestfailed", (request) => failed.push(`${request.url()} ${request.postData()}`));
  await change(page, "12 ft");
  const { report } = await event(page, "result", 2);
  assert.equal(report.inputs.opening.width.ft, 12);
  assert.ok(failed.some((told) => told.includes("sizing") && told.includes("14 ft")), "what is stale was not given up");
  release();
  await page.getByRole("img", { name: /12 ft/ }).waitFor();
  assert.equal(await page.evaluate(() => globalThis.seen.filter(({ name }) => name === "result").length), 2);
  assert.deepEqual(await finish(page), []);
});

test("who ticks three boxes one after the other asks once", async () => {
  const page = await answered({ query: { attributes: 'fields="usual"' }, clock: true });
  const before = posts().length;
  await stopTime(page);
  for (const code of ["pickup", "bus", "golf_cart"]) {
    await page.locator(`#vehicles-${code}`).check();
    await page.clock.runFor(200);
  }
  assert.equal(posts().length, before);
  await page.clock.runFor(400);
  const { report } = await event(page, "result", 2);
  assert.equal(report.inputs.vehicles.length, 5);
  assert.equal(posts().length - before, 1);
  assert.deepEqual(await finish(page), []);
});

test("a picture that cannot be had is told, and everything else is there", async () => {
  const page = await open();
  relay.fault = (call, response) => call.path.startsWith("/v1/drawings") && Boolean(response.destroy());
  await askFor(page);
  await page.getByText("The picture could not be loaded.").waitFor();
  await controls(page).add.click();
  await event(page, "add-to-cart");
  assert.deepEqual(await finish(page), []);
});

test("what is no answer is no answer", async () => {
  const page = await open();
  relay.fault = (call, response, cors) => {
    if (!isSizing(call)) return false;
    response.writeHead(200, { ...cors, "content-type": "text/html" }).end("<p>sign in first</p>");
    return true;
  };
  await askFor(page);
  await trouble(page, "That did not work.");
  assert.equal((await event(page, "error")).problem.code, "unexpected_answer");
  assert.deepEqual(await finish(page), []);
});
