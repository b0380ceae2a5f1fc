/** The release against its analytic solution: ln R(t) - ln R0 = a exp(-t / tau), so back at tau ln(a / limit). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { BACK_WITHIN, recovery } from "../../src/sniff/recovery.js";
import type { SniffPhase } from "../../src/sniff/sniff.js";

const BASE = [20_000, 90_000, 300_000];
const SWEEP_MS = 2000;
const CLEAN: SniffPhase = { atMs: [0, 2000, 4000, 6000], ohm: [BASE, BASE, BASE, BASE] };

interface Release {
  readonly sweeps: number;
  readonly away: number;
  readonly tauMs: number;
  /** What stays for good, in ln R. */
  readonly rest?: number;
  readonly noise?: number;
  readonly seed?: number;
}

function released({ sweeps, away, tauMs, rest = 0, noise = 0, seed = 1 }: Release): SniffPhase {
  const random = seededRandom(seed);
  const atMs = Array.from({ length: sweeps }, (_, i) => i * SWEEP_MS);
  const shift = (at: number) => -(rest + away * Math.exp(-at / tauMs));
  return {
    atMs,
    ohm: atMs.map((at) => BASE.map((ohm) => ohm * Math.exp(shift(at) + noise * standardNormal(random)))),
  };
}

describe("time until back in clean air", () => {
  it.each([
    [0.5, 20_000],
    [0.8, 30_000],
    [0.2, 60_000],
  ])("is exact for an exponential that starts %s away and falls with %s ms", (away, tauMs) => {
    const sweeps = 11;
    const now = recovery(CLEAN, released({ sweeps, away, tauMs }));
    const wanted = tauMs * Math.log(away / BACK_WITHIN) - (sweeps - 1) * SWEEP_MS;
    expect(now.kind === "releasing" && now.leftMs).toBeCloseTo(wanted, 3);
  });

  it("comes within a fifth of the truth under 1 % noise, nearly always", () => {
    const errors = Array.from({ length: 100 }, (_, seed) => {
      const now = recovery(CLEAN, released({ sweeps: 16, away: 0.8, tauMs: 25_000, noise: 0.01, seed }));
      const wanted = 25_000 * Math.log(0.8 / BACK_WITHIN) - 30_000;
      return now.kind === "releasing" ? Math.abs(now.leftMs / wanted - 1) : Infinity;
    });
    expect(errors.filter((error) => error < 0.2).length).toBeGreaterThanOrEqual(95);
  });

  it("does not depend on the unit of the resistance, nor on the order of the channels", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (factor) => {
        const release = released({ sweeps: 12, away: 0.6, tauMs: 20_000, noise: 0.005 });
        const scale = ({ atMs, ohm }: SniffPhase) => ({
          atMs,
          ohm: ohm.map((sweep) => sweep.map((value) => factor * value).toReversed()),
        });
        const here = recovery(CLEAN, release);
        const there = recovery(scale(CLEAN), scale(release));
        if (here.kind !== "releasing" || there.kind !== "releasing") throw new Error("not releasing");
        expect(there.leftMs / here.leftMs).toBeCloseTo(1, 6);
      }),
    );
  });
});

describe("never invents an end", () => {
  it("names no time where nothing falls", () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const stuck = released({ sweeps: 20, away: 0, tauMs: 1, rest: 0.3, noise: 0.01, seed });
      expect(recovery(CLEAN, stuck).kind === "releasing" ? seed : 0).toBe(0);
    }
  });

  it("names no time where the release stops short of the baseline", () => {
    const short = released({ sweeps: 60, away: 0.5, tauMs: 10_000, rest: 0.2, noise: 0.002 });
    expect(recovery(CLEAN, short).kind).toBe("notTelling");
  });

  it("names no time where it moves away", () => {
    const { atMs, ohm } = released({ sweeps: 12, away: 0.5, tauMs: 20_000 });
    expect(recovery(CLEAN, { atMs, ohm: ohm.toReversed() }).kind).toBe("notTelling");
  });

  it("names no time beyond ten minutes", () => {
    expect(recovery(CLEAN, released({ sweeps: 12, away: 0.8, tauMs: 900_000 })).kind).toBe("notTelling");
  });

  it("waits for enough sweeps, and needs clean air to come back to", () => {
    const few = released({ sweeps: 5, away: 0.8, tauMs: 20_000 });
    expect(recovery(CLEAN, few).kind).toBe("listening");
    expect(recovery(CLEAN, { atMs: [], ohm: [] })).toEqual({ kind: "listening", away: null });
    expect(recovery(undefined, few)).toEqual({ kind: "noBaseline" });
  });
});

it("is back at the limit, and not before", () => {
  const at = (away: number) => recovery(CLEAN, released({ sweeps: 8, away: 0, tauMs: 1, rest: away })).kind;
  expect(at(BACK_WITHIN * 0.999)).toBe("back");
  expect(at(BACK_WITHIN * 1.001)).not.toBe("back");
});
