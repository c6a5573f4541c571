/** A page in TypeScript. It is only compiled: what must not compile says so. */

import { LoopwrightHelper, type CartLine, type StockItem } from "../../src/api/embed/helper.js";

const stock: StockItem[] = [{ sku: "TIB-620", along_travel: "6 ft", across_lane: "20 ft", lead_in_length: "60 ft", turns: 2 }];
const helper = document.createElement("loopwright-helper");
helper.units = "us";
helper.defaults = { lead_in: { length: "60 ft" } };
helper.resolveStock = async (request, { signal }) => (request.opening?.barrier && !signal.aborted ? stock : []);
helper.messages = { title: "Loops", es: { title: "Lazos" } };
helper.addEventListener("loopwright-add-to-cart", (event) => {
  const lines: CartLine[] = event.detail.lines;
  event.preventDefault();
  console.log(lines[0]?.sku ?? lines[0]?.specification, helper.report?.summary.headline);
});
document.addEventListener("loopwright-error", ({ detail }) => console.log(detail.problem.code));
LoopwrightHelper.define("shop-loops");

// @ts-expect-error The report is read only.
helper.report = undefined;
// @ts-expect-error There is no such system.
helper.units = "imperial";
// @ts-expect-error Stock has numbers of the shop.
helper.stock = [{ along_travel: "6 ft", across_lane: "20 ft", lead_in_length: "60 ft" }];
