import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { languageFor } from "../../src/text/catalogue.js";
import { de } from "../../src/text/de.js";
import { en } from "../../src/text/en.js";
import { ENGLISH } from "../browser/gallery/fixtures/words.js";
import { PAGES } from "../browser/gallery/pages.js";
import { speakEveryState } from "./everyState.js";
import { leavesOf } from "./leaves.js";
import { recordReads } from "./recordReads.js";

const english = leavesOf(en);
const german = leavesOf(de);

it("has the same words in German as in English, key by key", () => {
  expect([...german.keys()].sort()).toEqual([...english.keys()].sort());
});

it("speaks with values where English does, with as many of them used at most", () => {
  for (const [path, leaf] of english) {
    expect(typeof german.get(path), path).toBe(typeof leaf);
  }
});

it.each([
  ["English", english],
  ["German", german],
])("leaves no word empty in %s, and puts every value into its sentence", (_language, leaves) => {
  for (const [path, leaf] of leaves) {
    if (typeof leaf === "string") expect(leaf.trim(), path).not.toBe("");
    if (typeof leaf !== "function" || path === "common.duration") continue;
    const speak = leaf as (...values: string[]) => string;
    const values = Array.from({ length: speak.length }, (_, i) => `value${i}`);
    const sentence = speak(...values).toLowerCase();
    for (const value of values) expect(sentence, path).toContain(value);
  }
});

it("says nowhere what a nose can never say", () => {
  // The design forbids these words on any finding; "halal" and "kosher" stand only where a diet is named.
  const forbidden =
    /\bsafe\b|free from|\bsicher(e|er|es|en)? (essen|zu essen)|unbedenklich|✓|✔|✗|✘|[\u{1F300}-\u{1FAFF}]/iu;
  for (const leaves of [english, german])
    for (const [path, leaf] of leaves) expect(String(leaf), path).not.toMatch(forbidden);
});

it("names halal and kosher only as a diet, never in a finding", () => {
  for (const leaves of [english, german])
    for (const [path, leaf] of leaves)
      if (/halal|kosher|koscher/i.test(String(leaf))) expect(path).toMatch(/^you\.(dietNames|dietNote)/);
});

function sourcesBelow(folder: string): string {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), "utf8"))
    .join("\n");
}

it("keeps no word that nothing says", () => {
  const { catalogue, read } = recordReads(en);
  const words = { text: catalogue, formats: ENGLISH.formats };
  for (const page of Object.values(PAGES)) page(words);
  speakEveryState(words);
  const appSource = sourcesBelow(join(import.meta.dirname, "../../src/app"));
  const saidByApp = (path: string) => {
    const [last = "", table = ""] = path.split(".").reverse();
    return new RegExp(`\\b${table}(\\.${last}\\b|\\[)`).test(appSource);
  };
  const unused = [...english.keys()].filter((path) => !read.has(path) && !saidByApp(path));
  expect(unused).toEqual([]);
});

it.each([
  [["de-AT", "en"], "de"],
  [["xx", "de"], "de"],
  [["en-US"], "en"],
  [["xx"], "en"],
  [[], "en"],
])("takes for %j the language %s", (preferred, language) => {
  expect(languageFor(preferred)).toBe(language);
});
