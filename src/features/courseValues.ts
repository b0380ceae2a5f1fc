import type { SniffPhase } from "../sniff/sniff.js";
import { QUARTERS } from "./quarterLevels.js";
import type { Course } from "./recipe.js";

/** Added to the spread before its logarithm is taken, log units: a tenth of a per cent is still noise. Common practice. */
const LEAST_SPREAD = 1e-3;

/**
 * The features of a recipe from the course of the headspace phase.
 *
 * @param headspace - at least one sweep
 * @param levels - its quarter levels, natural log of ohm, shape [QUARTERS, channels]
 * @param reference - what the levels are set against, natural log of ohm, shape [channels]
 * @returns natural log units, shape [featureCount]
 */
export function courseValues(
  course: Course,
  headspace: SniffPhase,
  levels: Float64Array,
  reference: Float64Array,
): Float64Array {
  const channels = reference.length;
  const against = levels.map((level, at) => level - reference[at % channels]!);
  switch (course) {
    case "end":
      return endValues(against, channels);
    case "bends":
      return bendValues(against, channels);
    case "quarters":
      return joined(against, logSpread(headspace, channels), steps(lastQuarter(against, channels)));
    case "mean":
      return meanValues(headspace, against, reference);
  }
}

function endValues(against: Float64Array, channels: number): Float64Array {
  const last = lastQuarter(against, channels);
  return joined(
    last,
    last.map((level, channel) => level - against[channel]!),
  );
}

function bendValues(against: Float64Array, channels: number): Float64Array {
  const bend = (middle: number) =>
    Float64Array.from({ length: channels }, (_, channel) => {
      const at = (quarter: number) => against[quarter * channels + channel]!;
      return at(middle) - (at(middle - 1) + at(middle + 1)) / 2;
    });
  return joined(endValues(against, channels), bend(1), bend(2), steps(lastQuarter(against, channels)));
}

function meanValues(headspace: SniffPhase, against: Float64Array, reference: Float64Array): Float64Array {
  const channels = reference.length;
  const mean = new Float64Array(channels);
  against.forEach((level, at) => (mean[at % channels]! += level / QUARTERS));
  const off = (sweep: readonly number[]) =>
    mean.map((level, channel) => Math.log(sweep[channel]!) - reference[channel]! - level);
  const [first, last] = [headspace.ohm[0]!, headspace.ohm.at(-1)!];
  return joined(mean, off(first), off(last), logSpread(headspace, channels), steps(mean));
}

/** Log of the standard deviation of the log resistance over all sweeps, shape [channels]. */
function logSpread(phase: SniffPhase, channels: number): Float64Array {
  const sweeps = phase.ohm.length;
  return Float64Array.from({ length: channels }, (_, channel) => {
    const logs = phase.ohm.map((sweep) => Math.log(sweep[channel]!));
    const mean = logs.reduce((sum, one) => sum + one, 0) / sweeps;
    const square = logs.reduce((sum, one) => sum + (one - mean) ** 2, 0) / sweeps;
    return Math.log(Math.sqrt(square) + LEAST_SPREAD);
  });
}

/** Differences between neighbouring channels, shape [channels - 1]. */
function steps(level: Float64Array): Float64Array {
  return level.slice(1).map((value, at) => level[at]! - value);
}

function lastQuarter(against: Float64Array, channels: number): Float64Array {
  return against.slice((QUARTERS - 1) * channels);
}

function joined(...parts: readonly Float64Array[]): Float64Array {
  return Float64Array.from(parts.flatMap((part) => [...part]));
}
