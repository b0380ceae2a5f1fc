/**
 * A simulated year of one sniffer: what the check jar saw, what the nose would have claimed without it and claimed with
 * it, and what a refresh or a second sniffer wins back. Run: npm run year -- [--seed N] [--plates N] [--out PICTURE]
 * [--document FILE]; a document holds what was printed, word for word, and the picture beside it.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { parseArgs } from "node:util";
import { parseNose } from "../../src/nose/noseFile.js";
import type { Nose } from "../../src/nose/nose.js";
import { readSniffFile } from "../../src/sniff/sniffFile.js";
import { refreshNose } from "../../src/teaching/refreshNose.js";
import { transferNose } from "../../src/transfer/transferNose.js";
import { useWasm } from "../teaching/useBackend.js";
import {
  chartOver,
  claimsOf,
  liveYear,
  MONTHS,
  SECOND_ID,
  type Claims,
  type Month,
} from "./simulatedYear.js";
import { yearDocument } from "./yearDocument.js";
import { yearPicture, type Course } from "./yearPicture.js";

const { values } = parseArgs({
  options: {
    seed: { type: "string", default: "1" },
    plates: { type: "string", default: "16" },
    out: { type: "string", default: "test/output/year.svg" },
    document: { type: "string" },
  },
});
const seed = Number(values.seed);
const printed: string[] = [];
function print(line: string): void {
  printed.push(line);
  process.stdout.write(`${line}\n`);
}
const models = new URL("../../models/", import.meta.url);
const read = parseNose(readFileSync(new URL("demo.nose.json", models), "utf8"));
if (!read.ok) throw new Error("the demo nose cannot be read");
const taught = read.value;
const taughtOn = readSniffFile(readFileSync(new URL("demo.sniffs.jsonl", models), "utf8")).sniffs;

const year = liveYear({ seed, platesAMonth: Number(values.plates) });
const charts = year.map(chartOver);
const alarmMonth = charts.findIndex(({ inControl }) => inControl === false);
const alarmWeek = charts[alarmMonth]?.alarmWeek ?? null;

/** With the plates of the month of the alarm; judged on the months after. */
async function refreshed(): Promise<Nose | null> {
  const month = year[alarmMonth];
  if (month === undefined) return null;
  await useWasm();
  const one = await refreshNose(taught, taughtOn, month.first, {
    seed,
    id: "refreshed",
    name: "refreshed",
    taughtAt: month.first.at(-1)!.takenAt,
  });
  return one.ok ? one.value.nose : null;
}

/** The pairs come from the first month, while the first sniffer was sound; the evidence up to the alarm. */
function moved(): { readonly nose: Nose | null; readonly words: string } {
  const until = alarmMonth < 0 ? MONTHS : alarmMonth;
  const samples = [...year[0]!.first, ...year.slice(0, until).flatMap(({ second }) => second)];
  const one = transferNose(taught, samples, {
    id: "moved",
    name: "moved",
    transferredAt: year[0]!.second.at(-1)!.takenAt,
    sniffer: { id: SECOND_ID, channels: taught.sniffer.channels },
  });
  if (!one.ok) return { nose: null, words: `not moved: ${one.error.kind}` };
  const { transfer } = one.value.nose;
  if (transfer === undefined) return { nose: null, words: "not moved" };
  const { method, pairs, gain } = transfer;
  const words =
    `moved by ${pairs} pairs (${method}): difference between the sniffers ${gain.before.toFixed(2)} before, ` +
    `${gain.after.toFixed(2)} after, in taught standard deviations`;
  return { nose: one.value.nose, words };
}

const after = (month: Month) => alarmMonth >= 0 && month.month - 1 > alarmMonth;
const course = (name: string, of: (month: Month, place: number) => Claims | null): Course => ({
  name,
  claims: year.map(of),
});

const fresh = await refreshed();
const { nose: onSecond, words } = moved();
const forged = { ...taught, sniffer: { ...taught.sniffer, id: SECOND_ID } };
const courses = [
  course("without the chart", ({ first }) => claimsOf(taught, first)),
  course("with the chart", ({ first }, place) => claimsOf(taught, first, charts[place]!.inControl)),
  course("refreshed", (month) => (fresh === null || !after(month) ? null : claimsOf(fresh, month.first))),
  course("second sniffer, nose as it was", (month) => (after(month) ? claimsOf(taught, month.second) : null)),
  course("second sniffer, were its name no matter", (month) =>
    after(month) ? claimsOf(forged, month.second) : null,
  ),
  course("second sniffer, moved nose", (month) =>
    onSecond === null || !after(month) ? null : claimsOf(onSecond, month.second),
  ),
];

const cell = (claims: Claims | null) =>
  (claims === null ? "-" : `${claims.claims} (${claims.wrong})`).padStart(12);
print(
  `seed ${seed}; ${values.plates} plates a month, ${year[0]!.first.length ? claimsOf(taught, year[0]!.first).answers : 0} answers asked for; each cell: findings given (wrong)`,
);
print(words);
courses.forEach(({ name }, i) => print(`${String.fromCharCode(65 + i)}: ${name}`));
print(
  `month  chart                ${courses.map((_, i) => String.fromCharCode(65 + i).padStart(12)).join("")}`,
);
year.forEach((_, place) => {
  const { inControl, alarmWeek: week } = charts[place]!;
  const word = week !== null ? `alarm in week ${week}` : inControl === null ? "first readings" : "in control";
  print(
    `${String(place + 1).padStart(5)}  ${word.padEnd(21)}${courses.map(({ claims }) => cell(claims[place]!)).join("")}`,
  );
});
const total = ({ claims }: Course) =>
  claims.reduce<Claims | null>(
    (sum, one, i) =>
      one === null || !after(year[i]!)
        ? sum
        : {
            claims: (sum?.claims ?? 0) + one.claims,
            wrong: (sum?.wrong ?? 0) + one.wrong,
            answers: (sum?.answers ?? 0) + one.answers,
          },
    null,
  );
print(`after the month of the alarm${courses.map((one) => cell(total(one))).join("")}`);
mkdirSync(dirname(values.out), { recursive: true });
writeFileSync(
  values.out,
  yearPicture(
    year.flatMap(({ weeks }) => weeks),
    courses,
    alarmWeek,
  ),
);
if (values.document !== undefined) writeFileSync(values.document, yearDocument(printed, values));
print(`picture: ${values.out}`);
