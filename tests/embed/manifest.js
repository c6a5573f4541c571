/**
 * The manifest of the element, made of the comments in its source. As a program it writes the manifest that is kept beside it.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { create, ts } from "@custom-elements-manifest/analyzer";

const FOLDER = new URL("../../src/api/embed/", import.meta.url);
export const KEPT = new URL("custom-elements.json", FOLDER);

/** Members that the analyzer takes for the element's, and that are of use to no page. */
const INSIDE = new Set(["handleEvent", "adoptedStyleSheets"]);

/** What a page may use, and nothing of the inside. */
export function manifest() {
  const text = readFileSync(new URL("helper.js", FOLDER), "utf8");
  const made = create({ modules: [ts.createSourceFile("helper.js", text, ts.ScriptTarget.ES2022, true)] });
  for (const module of made.modules) {
    module.declarations = module.declarations.filter(({ kind }) => kind === "class");
    for (const declared of module.declarations) {
      declared.members = declared.members?.filter(({ name, privacy }) => privacy !== "private" && !INSIDE.has(name));
      declared.events = declared.events?.filter(({ name }) => name.startsWith("loopwright-"));
    }
  }
  return `${JSON.stringify(made, null, 2)}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(KEPT, manifest());
