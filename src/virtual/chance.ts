import { seededRandom, standardNormal, type RandomSource } from "../kernel/random.js";

/**
 * A source of chance for one named moment of one run. The state of the sniffer stays plain data: chance is
 * worked out anew from the seed and the moment, so a copied state repeats and a run may be cut anywhere.
 *
 * @param seed - the run's seed, whole; the low 32 bits count
 * @param purpose - tells apart uses of one moment, whole
 * @param moment - which tick, day or plate, whole
 * @see Appleby's 32-bit finaliser of MurmurHash3 (public domain) for the mixing constants, value from memory
 */
export function chanceAt(seed: number, purpose: number, moment: number): RandomSource {
  return seededRandom(mixed(mixed(mixed(seed) ^ purpose) ^ moment));
}

/** A log-normal factor with median 1. `spread` is the standard deviation of its logarithm. */
export function spreadFactor(random: RandomSource, spread: number): number {
  return Math.exp(spread * standardNormal(random));
}

function mixed(value: number): number {
  let hash = (value + 0x9e3779b9) >>> 0;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
