// Writes the released description with the reviewed widenings of widened.json: patterns of requests that take all that they took and
// more, which no comparison can know. Each is { schema, before, after, reason }; one that is not as released, or not as described now,
// is a fault, so that the list never holds what has not happened.
//
//   node widen.mjs RELEASED LIST DESCRIPTION WRITTEN
import { readFileSync, writeFileSync } from "node:fs";

const [released, list, description] = process.argv.slice(2, 5).map((file) => JSON.parse(readFileSync(file, "utf8")));
for (const { schema, before, after, reason } of list) {
  const [then, now] = [released, description].map((document) => document.components.schemas[schema]);
  if (!reason || then?.pattern !== before || now?.pattern !== after) {
    console.error(`contract: widened.json: ${schema} did not widen from ${before} to ${after}, or no reason is given`);
    process.exit(1);
  }
  then.pattern = after;
}
writeFileSync(process.argv[5], JSON.stringify(released));
