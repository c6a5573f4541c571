/** React as one module for a page without a bundler, from its own files. */

import { readFileSync } from "node:fs";

const FILES = {
  react: "react/cjs/react.production.js",
  scheduler: "scheduler/cjs/scheduler.production.js",
  "react-dom": "react-dom/cjs/react-dom.production.js",
  "react-dom/client": "react-dom/cjs/react-dom-client.production.js",
};

export function reactModule() {
  const wrapped = Object.entries(FILES).map(([name, file]) =>
    `${JSON.stringify(name)}: (module, exports, require) => {\n${readFileSync(new URL(`node_modules/${file}`, import.meta.url), "utf8")}\n}`);
  return `const files = {\n${wrapped.join(",\n")}\n};
const made = {};
function require(name) {
  if (!made[name]) files[name](made[name] = { exports: {} }, made[name].exports, require);
  return made[name].exports;
}
export const React = require("react");
export const { createRoot } = require("react-dom/client");
`;
}
