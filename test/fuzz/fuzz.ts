/**
 * The long fuzzing: `tsx test/fuzz/fuzz.ts [--cases N] [--seed N] [--only NAME]`. Each decoder gets N cases (100 000
 * unless told) from seeds counted up from `--seed` (1 unless told); a fault names its seed, and `--seed` with
 * `--cases 1 --only NAME` shows it again. Ends with 1 if any promise was broken.
 */
import { parseArgs } from "node:util";
import { runTarget } from "./runTarget.js";
import { targets } from "./targets.js";

const { values } = parseArgs({
  options: {
    cases: { type: "string", default: "100000" },
    seed: { type: "string", default: "1" },
    only: { type: "string" },
  },
});
const cases = wholeNumber("cases", values.cases);
const seed = wholeNumber("seed", values.seed);
const chosen = targets.filter(({ name }) => values.only === undefined || name === values.only);
if (chosen.length === 0) throw new RangeError(`no such decoder: ${values.only}`);

let faults = 0;
for (const target of chosen) {
  const began = performance.now();
  const outcome = await runTarget(target, cases, seed);
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  faults += outcome.faults.length;
  console.log(
    `${outcome.name}: ${outcome.cases} cases in ${seconds} s, ${outcome.accepted} accepted, ` +
      `slowest ${outcome.slowestMs.toFixed(1)} ms, ${outcome.faults.length} faults`,
  );
  for (const fault of outcome.faults) console.log(`  seed ${fault.seed}: ${fault.cause}`);
}
console.log(faults === 0 ? "no promise broken" : `${faults} faults`);
process.exit(faults === 0 ? 0 : 1);

function wholeNumber(name: string, text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1) throw new RangeError(`--${name} must be a whole number above 0`);
  return value;
}
