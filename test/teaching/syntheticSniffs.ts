/** Sniffs with known truth: each group lowers the log resistance of its own channels. Not the virtual sniffer. */
import { type RandomSource, seededRandom, standardNormal } from "../../src/kernel/random.js";
import type { Sniff } from "../../src/sniff/sniff.js";

export interface Synthetic {
  readonly plates: number;
  readonly seed: number;
  readonly groups?: readonly string[];
  /** Mean response of a present group, in units of the plate-to-plate spread. */
  readonly strength?: number;
  readonly sweeps?: number;
  /** Shift of all log resistances that comes with the first group: a confounded baseline. */
  readonly baselineLeak?: number;
  /** Drift added to the response of every channel. */
  readonly drift?: number;
  readonly prefix?: string;
  /** Channels, whole, >= 1; four if left out. */
  readonly channels?: number;
}

const channelsOf = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ sensor: i % 2, heaterC: 200 + 60 * i, dwellMs: 500 }));

export const SYNTHETIC_CHANNELS = channelsOf(4);

/** Plates on evenings of eight, truths drawn at random, so that neither hour nor room tells a group. */
export function syntheticSniffs(options: Synthetic): Sniff[] {
  const random = seededRandom(options.seed);
  return Array.from({ length: options.plates }, (_, plate) => syntheticSniff(options, plate, random));
}

function syntheticSniff(options: Synthetic, plate: number, random: RandomSource): Sniff {
  const { groups = ["meat", "fish"], strength = 2, sweeps = 12, baselineLeak = 0, drift = 0 } = options;
  const channels = channelsOf(options.channels ?? SYNTHETIC_CHANNELS.length);
  const present = groups.map(() => random() < 0.5);
  const evening = Math.floor(plate / 8);
  const base = channels.map(
    (_, i) => 10 + i / 4 + 0.05 * standardNormal(random) + (present[0] ? baselineLeak : 0),
  );
  const response = channels.map((_, i) => {
    const smell = groups.reduce(
      (sum, _group, g) => sum + (present[g] && i % groups.length === g ? strength : 0),
      0,
    );
    return -0.2 * (2 + smell + standardNormal(random)) + drift * (i % 2 === 0 ? 1 : -0.5);
  });
  const sweep = (share: number) =>
    base.map((level, i) => Math.exp(level + share * response[i]! + 0.002 * standardNormal(random)));
  const id = `${options.prefix ?? "plate"}-${String(plate).padStart(4, "0")}`;
  return {
    format: "nidor-sniff/1",
    id,
    takenAt: new Date(Date.UTC(2026, 0, 1 + evening, 18, (plate % 8) * 10)).toISOString(),
    sniffer: { id: "synthetic", channels },
    plate: id,
    occasion: `evening-${evening}`,
    dish: groups.filter((_, g) => present[g]).join(" and ") || "rice",
    groups: Object.fromEntries(groups.map((group, g) => [group, present[g] ? "present" : "absent"])),
    cleanAir: { atMs: [0, 2000, 4000, 6000, 8000], ohm: [0, 0, 0, 0, 0].map(() => sweep(0)) },
    headspace: {
      atMs: Array.from({ length: sweeps }, (_, i) => 2000 * i),
      ohm: Array.from({ length: sweeps }, (_, i) => sweep(1 - Math.exp(-(i + 1) / 3))),
    },
  };
}
