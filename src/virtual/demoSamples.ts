import { chanceAt } from "./chance.js";
import { demoPlan } from "./demoPlan.js";
import { DEMO_NAME } from "./demoSampleId.js";
import { eveningAir } from "./roomAir.js";
import { simulateSniff, type SimulatedPhase, type SimulatedSniff } from "./simulateSniff.js";

export interface DemoOptions {
  /** How many plates, whole, >= 1. */
  readonly plates: number;
  /** Whole. */
  readonly seed: number;
  /** The same market so many days later, with the sniffer so much older; whole, >= 0, 0 if left out. */
  readonly laterDays?: number;
}

const CLEAN_AIR_MS = 30_000;
const HEADSPACE_MS = 90_000;
/** The first evening, and the time between two plates of one. Invented. */
const FIRST_EVENING = Date.parse("2026-08-07T18:00:00Z");
const BETWEEN_PLATES_MS = 8 * 60_000;
const DAYS_BETWEEN_EVENINGS = 7;
const MS_PER_DAY = 86_400_000;
/** Precision of a resistance in the file: finer than the noise. */
const SIGNIFICANT_DIGITS = 5;
const PURPOSE = { plan: 200, evening: 201 } as const;

/**
 * The demo samples: one sniffer over the evenings of an invented night market, each evening with its own air and
 * with a week's drift since the last.
 *
 * @returns sniffs in the order they were taken
 */
export function demoSamples({ plates, seed, laterDays = 0 }: DemoOptions): SimulatedSniff[] {
  const name = laterDays === 0 ? DEMO_NAME : `later-${laterDays}`;
  const plan = demoPlan(plates, chanceAt(seed, PURPOSE.plan, 0));
  return plan.map(({ dish, evening }, i) => {
    const place = i - plan.findIndex((other) => other.evening === evening);
    const days = laterDays + evening * DAYS_BETWEEN_EVENINGS;
    const sinceFirstMs = days * MS_PER_DAY + place * BETWEEN_PLATES_MS;
    const number = String(i + 1).padStart(3, "0");
    return rounded(
      simulateSniff({
        seed: seed * 65_536 + i,
        dish,
        room: eveningAir(chanceAt(seed, PURPOSE.evening, evening)),
        ageDays: days,
        cleanAirMs: CLEAN_AIR_MS,
        headspaceMs: HEADSPACE_MS,
        takenAt: new Date(FIRST_EVENING + sinceFirstMs).toISOString().replace(".000", ""),
        id: `${name}-${number}`,
        plate: `${name}-plate-${number}`,
        occasion: `${laterDays === 0 ? "" : `${name}-`}market-evening-${String(evening + 1).padStart(2, "0")}`,
      }),
    );
  });
}

function rounded(sniff: SimulatedSniff): SimulatedSniff {
  const phase = ({ atMs, ohm }: SimulatedPhase): SimulatedPhase => ({
    atMs,
    ohm: ohm.map((sweep) => sweep.map((value) => Number(value.toPrecision(SIGNIFICANT_DIGITS)))),
  });
  return { ...sniff, cleanAir: phase(sniff.cleanAir), headspace: phase(sniff.headspace) };
}
