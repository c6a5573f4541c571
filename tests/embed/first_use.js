/** What the first users do: a customer with a telephone at a gate, a clerk with a keyboard. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { event, finish, open, relay } from "./browser.js";

test("a customer gets loops, a picture, what to watch and a cart", async () => {
  const page = await open("plain.html?es", { before: () => {
    document.addEventListener("DOMContentLoaded", () => (document.documentElement.lang = "es"));
  } });
  await event(page, "ready");
  await page.getByRole("textbox", { name: "Ancho libre" }).fill("24 ft");
  await page.getByRole("combobox", { name: "Tipo de portón" }).selectOption("Portón corredizo");
  await page.getByRole("button", { name: "Ver los lazos" }).click();
  const { summary, requestId } = await event(page, "result");
  assert.equal(summary.lines.length, 3);
  assert.match(requestId, /^[\w.-]+$/);
  await page.getByText(summary.headline).first().waitFor();
  await page.locator("loopwright-helper svg").waitFor();
  await page.getByText("puede haber un vehículo detenido").first().waitFor();
  await page.getByRole("button", { name: "Agregar al carrito" }).click();
  const { lines } = await event(page, "add-to-cart");
  assert.deepEqual(lines.map(({ quantity, marks }) => [quantity, marks]), [[3, ["A", "B", "C"]]]);
  assert.match(lines[0].specification, /Alambre/);
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/first.png`, fullPage: true });
  assert.deepEqual(await finish(page), []);
});
