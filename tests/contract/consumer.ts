// A storefront's code against the generated types: compiles only while names, optionality and shapes stay what they are.
import type { components, paths } from "./generated/loopwright.js";

type Request = paths["/v1/loop-sizing"]["post"]["requestBody"]["content"]["application/json"];
type Report = paths["/v1/loop-sizing"]["post"]["responses"][200]["content"]["application/json"];
type Problem = components["schemas"]["Problem"];

const smallest: Request = { opening: { width: "24 ft", barrier: "slide_gate" } };

const yardGate: Request = {
  opening: { width: "7.2 m", barrier: "slide_gate" },
  roles: ["exit", "obstruction_outside", "obstruction_inside"],
  vehicles: ["passenger_car", "high_bed_truck"],
  lead_in: { length: "18 m" },
};

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
  return Object.fromEntries(problem.errors.map((fault) => [fault.pointer, fault.hint]));
}

export { describe, explain, smallest, yardGate, unknownBarrier, bareNumber };
