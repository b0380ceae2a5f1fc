/**
 * What a phone has to load: `tsx test/sizeCheck.ts [FOLDER]` prints gzip sizes of a build (test/output/site unless
 * told) and ends with 1 above a ceiling. The first screen's JavaScript is what index.html names, with all that it imports
 * statically, and the words of the first screen in the longest language: `test/browser/firstScreen.test.ts` holds the
 * rest back and sees it stand. Pieces that are fetched later count for the whole only.
 */
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/** Octets after gzip at its usual level. The first screen's is the budget; the others stand a little above what is. */
const CEILINGS = {
  firstScreenJs: 45_000,
  css: 7_000,
  largestOtherJs: 42_000,
  teachWorkerJs: 260_000,
  wholeJs: 570_000,
} as const;

type Measure = keyof typeof CEILINGS;

const folder = process.argv[2] ?? "test/output/site";
const sizeOf = (path: string) => gzipSync(readFileSync(join(folder, path))).length;
const assets = readdirSync(join(folder, "assets")).map((name) => `assets/${name}`);
const scripts = assets.filter((path) => path.endsWith(".js"));

/** A script and all that it imports statically: `import ... from "./x.js"` or `import "./x.js"`, never `import(...)`. */
function staticallyImported(path: string, found = new Set<string>()): Set<string> {
  if (found.has(path)) return found;
  found.add(path);
  const code = readFileSync(join(folder, path), "utf8");
  for (const [, name = ""] of code.matchAll(/(?:\bfrom|\bimport)\s*["'`]\.\/([^"'`]+\.js)["'`]/g))
    staticallyImported(`assets/${name}`, found);
  return found;
}

const html = readFileSync(join(folder, "index.html"), "utf8");
const named = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, path = ""]) => path);
const first = new Set(named.flatMap((path) => [...staticallyImported(path)]));
if (first.size === 0) throw new RangeError(`${folder}/index.html names no script`);
const workers = scripts.filter((path) => /teachWorker/.test(path));
if (workers.length === 0) throw new RangeError(`${folder} has no teaching worker`);
const others = scripts.filter((path) => !first.has(path) && !workers.includes(path));

// English words are in the page's own scripts; `en/first` and `de/first` are both built as `first-*.js`.
const firstWords = scripts.filter((path) => /\/first-[^/]*\.js$/.test(path));
if (firstWords.length === 0) throw new RangeError(`${folder} has no other language than English`);

const sum = (paths: Iterable<string>) => [...paths].reduce((octets, path) => octets + sizeOf(path), 0);
const sizes: Readonly<Record<Measure, number>> = {
  firstScreenJs: sum(first) + Math.max(...firstWords.map(sizeOf)),
  css: sum(assets.filter((path) => path.endsWith(".css"))),
  largestOtherJs: Math.max(0, ...others.map(sizeOf)),
  teachWorkerJs: sum(workers),
  wholeJs: sum(scripts),
};
const measures = Object.keys(CEILINGS) as Measure[];
for (const measure of measures) {
  const over = sizes[measure] > CEILINGS[measure] ? "  TOO LARGE" : "";
  console.log(`${measure}: ${sizes[measure]} of at most ${CEILINGS[measure]} octets gzipped${over}`);
}
process.exit(measures.some((measure) => sizes[measure] > CEILINGS[measure]) ? 1 : 0);
