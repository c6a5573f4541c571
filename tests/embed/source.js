/** The script itself: its weight, its words, its manifest. */

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { gzipSync } from "node:zlib";
import { KEPT, manifest } from "./manifest.js";

const SOURCE = readFileSync(new URL("../../src/api/embed/helper.js", import.meta.url), "utf8");
const TYPES = readFileSync(new URL("../../src/api/embed/helper.d.ts", import.meta.url), "utf8");
const MAX_BYTES = 30 * 1024;

test("it is light", () => {
  const size = gzipSync(SOURCE, { level: 9 }).length;
  console.log(`helper.js: ${SOURCE.length} bytes, ${size} packed`);
  assert.ok(size <= MAX_BYTES, `${size} bytes`);
});

test("the manifest is that of the source", () => {
  assert.equal(readFileSync(KEPT, "utf8"), manifest(), "write it anew: node manifest.js");
});

test("the types name every attribute, property and event of the manifest", () => {
  const element = JSON.parse(manifest()).modules[0].declarations.find(({ name }) => name === "LoopwrightHelper");
  for (const { name } of [...element.members, ...element.events]) assert.match(TYPES, new RegExp(`\\b${name}\\b`), name);
  const attributes = /observedAttributes = \[([^\]]*)\]/.exec(SOURCE)[1].match(/[a-z-]+/g);
  assert.deepEqual(element.attributes.map(({ name }) => name).filter((name) => name).sort(), attributes.sort());
});

test("slots, parts and custom properties of the manifest are those of the source", () => {
  const element = JSON.parse(manifest()).modules[0].declarations.find(({ name }) => name === "LoopwrightHelper");
  const found = (pattern) => [...new Set([...SOURCE.matchAll(pattern)].map((match) => match[1]))].sort();
  assert.deepEqual(element.slots.map(({ name }) => name).sort(), found(/"slot", \{ name: "([a-z-]+)"/g));
  assert.deepEqual(element.cssParts.map(({ name }) => name).sort(), found(/part: "([a-z-]+)"/g));
  assert.deepEqual(element.cssProperties.map(({ name }) => name).sort(), found(/var\((--loopwright-[a-z]+)/g));
});

test("every word is there in every language, with the same places to fill, and used", () => {
  const written = /const WORDS = (\{[^]*?\n\});/.exec(SOURCE)[1];
  const words = Function(`return ${written}`)();
  const names = Object.keys(words.en);
  for (const [language, said] of Object.entries(words)) {
    assert.deepEqual(Object.keys(said), names, language);
    for (const name of names) {
      const places = (text) => [...new Set(text.match(/\{\w+\}/g))].sort();
      assert.deepEqual(places(said[name]), places(words.en[name]), `${language}: ${name}`);
      assert.equal(said[name].split("|").length, words.en[name].split("|").length, `${language}: ${name}`);
      if (language === "fr") assert.doesNotMatch(said[name], / [:?!;]/, `a space that breaks: ${name}`);
    }
  }
  const rest = SOURCE.replace(written, "");
  for (const name of names) assert.match(rest, new RegExp(`"${name}"`), `${name} is never said`);
});

test("it holds no sink for text as markup or script", () => {
  assert.doesNotMatch(SOURCE, /innerHTML|outerHTML|insertAdjacentHTML|document\.write|DOMParser|setHTML|eval\(|new Function|\.cssText|\.style\b/);
});
