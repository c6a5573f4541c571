/**
 * What the relay answers where the instance cannot yet: forms, and drawings as a figure whose colours stand at its elements.
 *
 * With an instance that serves both, nothing here is used.
 */

import { readFileSync } from "node:fs";
import { gunzipSync, gzipSync } from "node:zlib";

const FORM = JSON.parse(readFileSync(new URL("form.json", import.meta.url), "utf8"));

const text = (value, language) => (value && typeof value === "object" && "en" in value ? value[language] : value);

/** A form of the shape that is agreed, for an instance without one. */
export function form(request, status, _body, headers) {
  const url = new URL(request.url, "http://relay");
  if (status !== 404 || url.pathname !== "/v1/forms/loop-sizing") return undefined;
  const language = url.searchParams.get("lang") ?? "en";
  const said = (object) => Object.fromEntries(Object.entries(object).map(([name, value]) => [name, text(value, language)]));
  const fields = FORM.fields.map((field) => ({ ...said(field), ...(field.options ? { options: field.options.map(said) } : {}) }));
  const answer = { ...FORM, language, sections: FORM.sections.map(said), fields };
  const { "content-encoding": _, "transfer-encoding": __, ...kept } = headers;
  return [200, gzipSync(JSON.stringify(answer)), { ...kept, "content-type": "application/json", "content-encoding": "gzip" }];
}

const ATTRIBUTES = {
  paper: 'fill="#fff"', line: 'fill="none" stroke="#16191d" stroke-width="1"', fine: 'fill="none" stroke="#79828c" stroke-width=".6"',
  heavy: 'fill="none" stroke="#16191d" stroke-width="2"', wire: 'fill="none" stroke="#0b4f94" stroke-width="1.6"',
  frame: 'fill="none" stroke="#a3140c" stroke-width="1.6"', dashed: 'fill="none" stroke="#16191d" stroke-width=".9" stroke-dasharray="4 3"',
  chain: 'fill="none" stroke="#16191d" stroke-width=".9" stroke-dasharray="9 2.5 2 2.5"', dot: 'fill="#16191d"', stop: 'fill="#a3140c"',
  balloon: 'fill="#fff" stroke="#16191d"', wiredot: 'fill="#0b4f94"', fill: 'fill="#d6dee6"', core: 'fill="#fff" stroke="#0b4f94"',
  head: 'font-size="14" font-weight="bold"', strong: 'font-weight="bold"', middle: 'text-anchor="middle"', end: 'text-anchor="end"',
};

/** A drawing without its style sheet, for an instance that has no `content=figure`. */
export function figure(request, status, body, headers) {
  if (status !== 200 || !request.url.startsWith("/v1/drawings/") || !request.url.includes("content=figure")) return undefined;
  const svg = (headers["content-encoding"] === "gzip" ? gunzipSync(body) : body).toString();
  if (!svg.includes("<style")) return undefined;
  const plain = svg.replace(/<style>.*?<\/style>\n?/s, "")
    .replace(/class="([^"]*)"/g, (whole, names) => `${whole} ${names.split(" ").map((name) => ATTRIBUTES[name] ?? "").join(" ")}`)
    .replace(/(fill|stroke|stroke-width)="[^"]*"(?=[^>]*\s\1=)/g, "")
    .replaceAll("<text ", '<text font-family="sans-serif" ').replace('<svg ', '<svg font-size="11" ');
  const { "content-encoding": _, ...kept } = headers;
  return [200, Buffer.from(plain), kept];
}
