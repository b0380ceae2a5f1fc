/** Plates of the invented market under two virtual sniffers, in the shape of sniff files. */
import { seededRandom, shuffled } from "../../src/kernel/random.js";
import { parseNose } from "../../src/nose/noseFile.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { NIGHT_MARKET } from "../../src/virtual/dishes.js";
import { eveningAir } from "../../src/virtual/roomAir.js";
import { simulateSniff } from "../../src/virtual/simulateSniff.js";
import { DEMO_LAYOUT, type VirtualSnifferOptions } from "../../src/virtual/snifferState.js";
import { builtUnit, DEMO_UNIT } from "../../src/virtual/unit.js";
import { readFileSync } from "node:fs";

const read = parseNose(readFileSync(new URL("../../models/demo.nose.json", import.meta.url), "utf8"));
if (!read.ok) throw new Error("the demo nose cannot be read");
export const DEMO_NOSE = read.value;

/** The taught sniffer where the demo samples ended. */
export const TAUGHT_NOW = { unit: DEMO_UNIT, ageDays: 84, unitSeed: 1 };
export const SECOND_ID = "5e0d1e0000000002";

export interface Served {
  /** Plates that the first sniffer sniffs. */
  readonly onFirst: number;
  /** Plates that the second sniffs, from the first plate on: the common ones are the pairs. */
  readonly onSecond: number;
  readonly seed: number;
  /** A new unit as the seed has it if left out. */
  readonly second?: Pick<VirtualSnifferOptions, "unit" | "ageDays" | "unitSeed">;
}

/** The unit that a seed gives where no other is named. */
export const secondUnit = (seed: number) => builtUnit(seededRandom(seed));

/** Dishes in random order, every plate with chances of its own, and noise, gusts and air of each sniff its own. */
export function servedToTwo({ onFirst, onSecond, seed, second }: Served): Sniff[] {
  const random = seededRandom(seed);
  const other = second ?? { unit: builtUnit(random), ageDays: 0, unitSeed: 2 };
  const plates = Math.max(onFirst, onSecond);
  const dishes = Array.from({ length: Math.ceil(plates / NIGHT_MARKET.length) }, () =>
    shuffled(NIGHT_MARKET, random),
  ).flat();
  const room = eveningAir(random);
  return Array.from({ length: plates }, (_, plate) =>
    ([1, 2] as const).flatMap((which): Sniff[] => {
      if (plate >= (which === 1 ? onFirst : onSecond)) return [];
      return [
        simulateSniff({
          seed: seed * 4096 + plate * 2 + which,
          plateSeed: seed * 4096 + plate,
          layout: which === 1 ? DEMO_LAYOUT : { ...DEMO_LAYOUT, snifferId: SECOND_ID },
          ...(which === 1 ? TAUGHT_NOW : other),
          dish: dishes[plate]!,
          room,
          cleanAirMs: 30_000,
          headspaceMs: 90_000,
          takenAt: "2026-12-01T18:30:00Z",
          id: `two-${seed}-${plate}-${which}`,
          plate: `two-${seed}-plate-${plate}`,
          occasion: `two-${seed}`,
        }),
      ];
    }),
  ).flat();
}
