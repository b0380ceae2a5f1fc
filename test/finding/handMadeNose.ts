/** A nose small enough to follow by hand: log-odds of the group = log of the first resistance. */
import type { GroupHorizon, GroupNose, Nose } from "../../src/nose/nose.js";
import type { Sniff } from "../../src/sniff/sniff.js";

export const CHANNELS = [
  { sensor: 0, heaterC: 200, dwellMs: 1000 },
  { sensor: 1, heaterC: 200, dwellMs: 1000 },
];

interface Made {
  /** Held-out log-odds of plates with the group and without it, one sniff a plate. */
  readonly present: readonly number[];
  readonly absent: readonly number[];
  /** Where each horizon begins; sniffs below last 30 s. */
  readonly fromMs?: readonly number[];
  readonly recipe?: number;
  readonly name?: string;
}

const FOLDS = 5;

/** One group with the given held-out scores, taken as already calibrated. */
export function handMadeGroup({ present, absent, fromMs = [0], name = "meat" }: Made): GroupNose {
  const logits = Float32Array.from([...present, ...absent]);
  const horizon: GroupHorizon = {
    calibration: { kind: "identity" },
    margin: 1 / (logits.length + 2),
    logits,
    probabilities: logits.map((logit) => 1 / (1 + Math.exp(-logit))),
  };
  return {
    name,
    platesPresent: present.length,
    platesAbsent: absent.length,
    truth: Int16Array.from(logits, (_, i) => (i < present.length ? 1 : 0)),
    plate: Int16Array.from(logits, (_, i) => i),
    fold: Int16Array.from(logits, (_, i) => i % FOLDS),
    horizons: logits.length === 0 ? [] : fromMs.map(() => horizon),
  };
}

/** A nose of one group; the distance from its one taught plate is the log of the second resistance. */
export function handMadeNose(made: Made): Nose {
  const group = handMadeGroup(made);
  const { fromMs = [0], recipe = 3 } = made;
  const features = recipe % 2 === 1 ? 4 : 9;
  const reference = recipe >= 3;
  const at = (place: number) => Float32Array.from({ length: features }, (_, i) => (i === place ? 1 : 0));
  return {
    format: "nidor-nose/1",
    id: "hand-made",
    name: "hand-made",
    taughtAt: "2026-11-25T18:30:00Z",
    sniffer: { id: "sniffer-a", channels: CHANNELS },
    recipe,
    platesTaught: made.present.length + made.absent.length,
    sniffsTaught: made.present.length + made.absent.length,
    occasionsTaught: 4,
    plateNames: Array.from(group.plate, (plate) => `plate ${plate}`),
    groups: [group],
    nets: null,
    horizons: fromMs.map((from, i) => ({
      fromMs: from,
      uptoMs: fromMs[i + 1] === undefined ? 30_000 : from,
      input: {
        humiditySlope: new Float32Array(features),
        usualRise: 0,
        centre: Float32Array.from({ length: features }, (_, i) => (i < 2 && reference ? Math.log(1000) : 0)),
        scale: new Float32Array(features).fill(1),
      },
      mix: Float32Array.from([0, 1, 0, 0, 0]),
      logistic: { weights: at(0), intercepts: new Float32Array(1) },
      discriminant: null,
      trees: null,
      neighbours: {
        axes: 1,
        whitening: at(1),
        references: new Float32Array(1),
        truths: Int16Array.from([1]),
        plates: Int16Array.from([0]),
        localScale: Float32Array.from([1]),
      },
      heldOutDistances: Float32Array.from({ length: 40 }, (_, held) => held / 100),
    })),
    chosen: "logistic",
    report: {
      groups: [],
      rivals: [],
      horizons: [],
      recipes: [],
      chosen: "logistic",
      leftOut: [],
      notes: [],
      split: "plate",
      folds: FOLDS,
      backend: "none",
    },
  };
}

/** Sixteen sweeps of headspace, two seconds apart, whose log-odds under the hand-made nose is `logit`. */
export function handMadeSniff(
  logit: number | ((sweep: number) => number),
  other: Partial<Sniff> = {},
): Sniff {
  const at = typeof logit === "number" ? () => logit : logit;
  const sweeps = Array.from({ length: 16 }, (_, i) => i);
  return {
    format: "nidor-sniff/1",
    id: "plate-1",
    takenAt: "2026-11-25T19:00:00Z",
    sniffer: { id: "sniffer-a", channels: CHANNELS },
    plate: "plate-1",
    occasion: "evening-1",
    dish: "broth",
    groups: {},
    // A little scatter: a channel that never changes would be a stuck one.
    headspace: {
      atMs: sweeps.map((i) => 2000 * i),
      ohm: sweeps.map((i) => [1000 * Math.exp(at(i)), 1000 * (1 + 1e-4 * (i % 2))]),
    },
    ...other,
  };
}

/** Evenly spread scores from `low` to `high`. */
export function spread(count: number, low: number, high: number): number[] {
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / Math.max(1, count - 1));
}
