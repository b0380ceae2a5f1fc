/** A source of chance: each call gives a uniform fraction in [0, 1). Pure code takes one as an argument. */
export type RandomSource = () => number;

/**
 * A small seeded generator (mulberry32), so that a run repeats.
 *
 * @param seed - any number; its low 32 bits are used
 * @returns a source with period 2^32, good for simulation, never for secrets
 * @see Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (the mixing idea)
 */
export function seededRandom(seed: number): RandomSource {
  // In a list, because a lone number of 32 bits would be made anew at each call.
  const state = Uint32Array.of(seed);
  return () => {
    const now = ((state[0] ?? 0) + 0x6d2b79f5) >>> 0;
    state[0] = now;
    let mixed = Math.imul(now ^ (now >>> 15), now | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * One standard normal deviate.
 *
 * @see Box and Muller, Ann. Math. Stat. 29 (1958), 610-611
 */
export function standardNormal(random: RandomSource): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}

/** A shuffled copy. @see Durstenfeld, Comm. ACM 7 (1964), 420 */
export function shuffled<T>(items: readonly T[], random: RandomSource): T[] {
  const copy = [...items];
  for (let last = copy.length - 1; last > 0; last -= 1) {
    const pick = Math.floor(random() * (last + 1));
    const held = copy[last] as T;
    copy[last] = copy[pick] as T;
    copy[pick] = held;
  }
  return copy;
}
