import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { STEADY_MAX_DRIFT, STEADY_WINDOW_MS, steadiness } from "../../src/sniff/steadiness.js";

/** A baseline of one channel: a straight line in ln R plus normal noise, one sweep each two seconds. */
function baseline(options: { count: number; driftPerWindow: number; noise: number; scale?: number }) {
  const random = seededRandom(1);
  const atMs = Array.from({ length: options.count }, (_, i) => i * 2000);
  const ohm = atMs.map((time) => [
    (options.scale ?? 50_000) *
      Math.exp((options.driftPerWindow * time) / STEADY_WINDOW_MS + options.noise * standardNormal(random)),
  ]);
  return { atMs, ohm };
}

describe("a clean-air baseline", () => {
  it("is steady when it neither drifts nor scatters", () => {
    expect(steadiness(baseline({ count: 12, driftPerWindow: 0, noise: 0.001 }))).toMatchObject({
      steady: true,
      why: null,
    });
  });

  it("is not judged before the window is filled", () => {
    expect(steadiness({ atMs: [], ohm: [] }).why).toBe("tooFewSweeps");
    expect(steadiness(baseline({ count: 5, driftPerWindow: 0, noise: 0 })).why).toBe("tooFewSweeps");
  });

  it.each([
    [STEADY_MAX_DRIFT * 0.98, true],
    [STEADY_MAX_DRIFT * 1.02, false],
  ])("with a drift of %f in ln R over the window is steady: %s", (driftPerWindow, steady) => {
    const judged = steadiness(baseline({ count: 15, driftPerWindow, noise: 0 }));
    expect(judged.steady).toBe(steady);
    expect(judged.drift).toBeCloseTo(driftPerWindow, 9); // the line was built with this slope
  });

  it("is not steady when it scatters, however flat", () => {
    expect(steadiness(baseline({ count: 15, driftPerWindow: 0, noise: 0.08 })).steady).toBe(false);
  });

  it("is judged by its worst channel", () => {
    const flat = baseline({ count: 12, driftPerWindow: 0, noise: 0 });
    const drifting = baseline({ count: 12, driftPerWindow: 0.2, noise: 0 });
    const ohm = flat.ohm.map((sweep, i) => [...sweep, ...(drifting.ohm[i] ?? [])]);
    expect(steadiness({ atMs: flat.atMs, ohm }).why).toBe("drifting");
  });

  it("forgets what happened before the window", () => {
    const early = baseline({ count: 10, driftPerWindow: 3, noise: 0 });
    const late = baseline({ count: 12, driftPerWindow: 0, noise: 0.001 });
    const atMs = [...early.atMs, ...late.atMs.map((time) => time + 20_000)];
    expect(steadiness({ atMs, ohm: [...early.ohm, ...late.ohm] }).steady).toBe(true);
  });

  it("is judged the same in any unit of resistance", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (factor) => {
        const base = { count: 14, driftPerWindow: 0.01, noise: 0.01 };
        const plain = steadiness(baseline(base));
        const scaled = steadiness(baseline({ ...base, scale: 50_000 * factor }));
        expect(scaled.steady).toBe(plain.steady);
        expect(scaled.drift).toBeCloseTo(plain.drift, 9);
        expect(scaled.scatter).toBeCloseTo(plain.scatter, 9);
      }),
    );
  });
});
