// A storefront's code against the generated types: it compiles only while names, optionality and shapes stay what they are, and
// runs against an instance at INSTANCE, whose answers must be the kept ones.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import createClient from "openapi-fetch";
import type { components, paths } from "./generated/loopwright.js";

type Schemas = components["schemas"];
type Request = paths["/v1/loop-sizing"]["post"]["requestBody"]["content"]["application/json"];
type Report = paths["/v1/loop-sizing"]["post"]["responses"][200]["content"]["application/json"];
type Problem = Schemas["Problem"];

const smallest: Request = { opening: { width: "24 ft", barrier: "slide_gate" } };
const unclearComma: Request = { opening: { width: "7,200 mm", barrier: "slide_gate" }, lead_in: { length: "50" } };

// @ts-expect-error a closed list refuses what is not on it
const unknownBarrier: Request = { opening: { width: "24 ft", barrier: "drawbridge" } };
// @ts-expect-error a quantity is text
const bareNumber: Request = { opening: { width: 24, barrier: "slide_gate" } };

function describe(report: Report): string[] {
  const lines = report.loops.map(
    (loop) => `${loop.role}: ${loop.along_travel.ft} x ${loop.across_lane.ft} ft, ${loop.turns} turns`,
  );
  const stops = report.findings.filter((finding) => finding.level === "stop").map((finding) => finding.message);
  return [...lines, ...stops, report.basis.engine];
}

function explain(problem: Problem): Record<string, string> {
  return Object.fromEntries(problem.errors.map((fault) => [fault.pointer, fault.code]));
}

const { INSTANCE: baseUrl, EXAMPLES: examples } = process.env;
assert(baseUrl && examples, "INSTANCE is the address of an instance, EXAMPLES the folder of kept requests and answers");
const client = createClient<paths>({ baseUrl });
let calls = 0;

/** A kept request or answer, taken for what the caller says it is. */
function kept<T>(name: string): T {
  return JSON.parse(readFileSync(`${examples}/${name}.json`, "utf8")) as T;
}

/** What an operation answered, which must be no failure. */
function answered<T>(outcome: { data?: T; error?: unknown; response: Response }): T {
  calls += 1;
  assert.equal(outcome.response.status, 200, JSON.stringify(outcome.error));
  assert(outcome.data !== undefined);
  return outcome.data;
}

/** The problem with which an operation refused. */
function refused(outcome: { data?: unknown; error?: Problem; response: Response }, status: number): Problem {
  calls += 1;
  assert.equal(outcome.response.status, status);
  assert.equal(outcome.response.headers.get("content-type"), "application/problem+json");
  assert(outcome.error && outcome.data === undefined);
  assert.equal(outcome.error.status, status);
  return outcome.error;
}

async function calculations() {
  const coil = kept<Schemas["LoopCharacteristicsRequest"]>("loop-characteristics/standard_test_loop.request");
  const measured = answered(await client.POST("/v1/loop-characteristics", { body: coil }));
  assert.deepEqual(measured, kept("loop-characteristics/standard_test_loop.answer"));
  assert(measured.as_built_low_uh < measured.terminal_inductance_uh);

  const car = kept<Schemas["VehicleResponseRequest"]>("vehicle-response/car_on_test_loop.request");
  const seen = answered(await client.POST("/v1/vehicle-response", { body: car }));
  assert.deepEqual(seen, kept("vehicle-response/car_on_test_loop.answer"));
  assert(seen.detected && seen.profile.length > 10);

  const yard = kept<Request>("loop-sizing/yard_gate.request");
  const sized = answered(await client.POST("/v1/loop-sizing", { body: yard }));
  assert.deepEqual(sized, kept("loop-sizing/yard_gate.answer"));
  const wanted = kept<Report>("loop-sizing/yard_gate.answer");
  assert.deepEqual(describe(sized), describe(wanted));
  const repeated = answered(await client.POST("/v1/loop-sizing", { body: yard }));
  assert.deepEqual(repeated, sized);

  const pair = kept<Schemas["DetectorCompatibilityRequest"]>("detector-compatibility/yard_gate_pair.request");
  const tuned = answered(await client.POST("/v1/detector-compatibility", { body: pair }));
  assert.deepEqual(tuned, kept("detector-compatibility/yard_gate_pair.answer"));

  const bill = kept<Schemas["MaterialEstimateRequest"]>("material-estimate/yard_gate.request");
  const loaded = answered(await client.POST("/v1/material-estimate", { body: bill }));
  assert.deepEqual(loaded, kept("material-estimate/yard_gate.answer"));
  // Money is text: a number would lose cents.
  assert.match(loaded.cost?.total ?? "", /^\d+\.\d{2}$/);

  const damp = kept<Schemas["CureGuidanceRequest"]>("cure-guidance/winter_gate_damp.request");
  const cured = answered(await client.POST("/v1/cure-guidance", { body: damp }));
  assert.deepEqual(cured, kept("cure-guidance/winter_gate_damp.answer"));

  const leak = kept<Schemas["FaultFindingRequest"]>("fault-finding/leak_after_rain.request");
  const suspected = answered(await client.POST("/v1/fault-finding", { body: leak }));
  assert.deepEqual(suspected, kept("fault-finding/leak_after_rain.answer"));
}

async function plans() {
  const cafe = kept<Schemas["InstallationPlanRequest"]>("installation-plan/cafe_drive_through.request");
  const answer = kept<Schemas["InstallationPlanReport"]>("installation-plan/cafe_drive_through.answer");
  const plan = answered(await client.POST("/v1/installation-plan", { body: cafe }));
  assert.deepEqual(plan, answer);
  assert.equal(plan.cure, undefined, "a part that was not asked for is absent");

  const items = [{ id: "cafe", request: cafe }, { id: "comma", request: unclearComma }];
  const batch = answered(await client.POST("/v1/installation-plan/batch", { body: { items } }));
  assert.deepEqual([batch.succeeded, batch.failed], [1, 1]);
  assert.deepEqual(batch.results[0]?.report, answer);
  assert.equal(batch.results[1]?.status, 422);
  assert(batch.results[1].problem);
  assert.equal(explain(batch.results[1].problem)["#/items/1/request/opening/width"], "decimal_comma");

  const page = answered(await client.POST("/v1/installation-plan/job-sheet", { body: cafe, parseAs: "text" }));
  assert.match(page, /^<!DOCTYPE html>/i);
}

async function refusals() {
  const problem = refused(await client.POST("/v1/loop-sizing", { body: unclearComma }), 422);
  assert.equal(problem.code, "validation_failed");
  assert.deepEqual(explain(problem), { "#/opening/width": "decimal_comma", "#/lead_in/length": "unit_missing" });
  assert(problem.errors.every((fault) => fault.hint.length > 0));
  const closed = refused(await client.POST("/v1/loop-sizing", { body: unknownBarrier }), 422);
  assert.deepEqual(explain(closed), { "#/opening/barrier": "value_unknown" });
  const bare = refused(await client.POST("/v1/drawings/plan", { body: bareNumber, parseAs: "text" }), 422);
  assert.deepEqual(Object.keys(explain(bare)), ["#/opening/width"]);
}

async function drawings() {
  const drawing = answered(await client.POST("/v1/drawings/plan", { body: smallest, parseAs: "text" }));
  assert.match(drawing, /^<svg [\s\S]*<\/svg>\s*$/);
  assert.match(drawing, /opening 24\sft/);
}

async function tables() {
  const path = "/v1/reference/barriers";
  const first = await client.GET(path);
  const gate = answered(first).rows.find((row) => row.code === smallest.opening.barrier);
  assert(gate?.has_metal_leaf && gate.usual_roles.length > 0);
  const etag = first.response.headers.get("etag");
  assert(etag);
  const again = await client.GET(path, { params: { header: { "if-none-match": etag } } });
  assert.equal(again.response.status, 304);
  const changed = await client.GET(path, { params: { header: { "if-none-match": '"of another release"' } } });
  assert.deepEqual(answered(changed), first.data);
}

async function service() {
  answered(await client.GET("/health/live"));
  answered(await client.GET("/health/ready"));
  assert.match(answered(await client.GET("/metrics", { parseAs: "text" })), /\n# EOF\n$/);
  const page = await client.GET("/problems/{slug}", {
    params: { path: { slug: "validation-failed" } },
    parseAs: "text",
  });
  assert(answered(page).includes("<html"));
}

for (const part of [calculations, plans, refusals, drawings, tables, service]) {
  await part();
}
console.log(`consumer.ts: ${calls} calls are answered as the types and the kept answers say`);
