/**
 * Writes the demo samples as a sniff file:
 * `npx tsx src/cli/makeDemoSamples.ts [--plates N] [--seed S] [--later-days D] --out FILE`
 */
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { demoSamples } from "../virtual/demoSamples.js";

const DEFAULT_PLATES = 208;
const DEFAULT_SEED = 20_261_125;

function wholeNumber(name: string, text: string | undefined, otherwise: number): number {
  const value = text === undefined ? otherwise : Number(text);
  if (!Number.isInteger(value) || value < 1) throw new RangeError(`--${name} must be whole and at least 1`);
  return value;
}

function main(): void {
  const { values } = parseArgs({
    options: {
      plates: { type: "string" },
      seed: { type: "string" },
      "later-days": { type: "string" },
      out: { type: "string" },
    },
  });
  if (values.out === undefined) throw new RangeError("--out FILE is missing");
  const sniffs = demoSamples({
    plates: wholeNumber("plates", values.plates, DEFAULT_PLATES),
    seed: wholeNumber("seed", values.seed, DEFAULT_SEED),
    ...(values["later-days"] === undefined
      ? {}
      : { laterDays: wholeNumber("later-days", values["later-days"], 1) }),
  });
  const text = sniffs.map((sniff) => `${JSON.stringify(sniff)}\n`).join("");
  writeFileSync(values.out, text);
  process.stdout.write(`${sniffs.length} sniffs, ${Buffer.byteLength(text)} bytes, to ${values.out}\n`);
}

main();
