import { standardNormal, type RandomSource } from "../kernel/random.js";

/**
 * One step of a stationary first-order autoregressive process with mean 0, sampled exactly
 * (Ornstein-Uhlenbeck): correlation `exp(-step / tau)`, standard deviation `sd` at all times.
 *
 * @param value - the value before
 * @param sd - stationary standard deviation, >= 0
 * @param tauMs - correlation time, > 0
 * @param stepMs - length of the step, >= 0
 * @see Gillespie, Phys. Rev. E 54 (1996), 2084-2091, the exact update
 */
export function wander(
  value: number,
  sd: number,
  tauMs: number,
  stepMs: number,
  random: RandomSource,
): number {
  const kept = Math.exp(-stepMs / tauMs);
  return value * kept + sd * Math.sqrt(1 - kept * kept) * standardNormal(random);
}

/**
 * A random walk over whole days: the sum of `days` independent normal steps. Day n is day n-1 and one step more.
 *
 * @param days - whole, >= 0; 0 gives 0
 * @param sdPerDay - standard deviation of one day's step
 * @param stepOf - the source of chance of one day, counted from 1
 */
export function dailyWalk(days: number, sdPerDay: number, stepOf: (day: number) => RandomSource): number {
  if (!Number.isInteger(days) || days < 0) throw new RangeError(`days: ${days}`);
  let sum = 0;
  for (let day = 1; day <= days; day += 1) sum += sdPerDay * standardNormal(stepOf(day));
  return sum;
}

/** Wandering parts of the logarithm of resistance. */
export interface NoiseState {
  /** Slow, one a film. */
  readonly slow: readonly [number, number];
  /** Faster, one a channel. */
  readonly fast: readonly number[];
}

/** Relaxations of several time constants add up to noise like 1/f. Sizes invented for the model. */
const SLOW = { sd: 0.005, tauMs: 600_000 };
const FAST = { sd: 0.003, tauMs: 20_000 };
/** White noise of one reading, standard deviation of the logarithm of resistance. */
export const WHITE_SD = 0.0025;

/** Noise that has gone on for long. */
export function restingNoise(channelCount: number, random: RandomSource): NoiseState {
  const still: NoiseState = { slow: [0, 0], fast: Array.from({ length: channelCount }, () => 0) };
  return stepNoise(still, Infinity, random);
}

/** One step of every wandering part. */
export function stepNoise(noise: NoiseState, stepMs: number, random: RandomSource): NoiseState {
  const [first, second] = noise.slow;
  return {
    slow: [
      wander(first, SLOW.sd, SLOW.tauMs, stepMs, random),
      wander(second, SLOW.sd, SLOW.tauMs, stepMs, random),
    ],
    fast: noise.fast.map((value) => wander(value, FAST.sd, FAST.tauMs, stepMs, random)),
  };
}
