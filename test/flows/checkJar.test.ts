import { describe, expect, it } from "vitest";
import { judgeJar, judgeJarFor, jarScore, PHASE_ONE_READINGS } from "../../src/flows/checkJar.js";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import type { Sniff } from "../../src/sniff/sniff.js";

const sniff: Sniff = {
  format: "nidor-sniff/1",
  id: "j1",
  takenAt: "2026-11-25T18:30:00Z",
  sniffer: { id: "n1", channels: [0, 1].map((sensor) => ({ sensor, heaterC: 250, dwellMs: 100 })) },
  plate: "jar",
  occasion: "o1",
  dish: "",
  groups: {},
  cleanAir: {
    atMs: [0, 1, 2],
    ohm: [
      [1000, 500],
      [1000, 500],
      [9000, 500],
    ],
  },
  headspace: {
    atMs: [0, 1],
    ohm: [
      [500, 250],
      [500, 250],
    ],
  },
};

/** Readings of a steady jar with a spread of 0.02, the later ones shifted. */
function readings(count: number, shift: number, seed: number): number[] {
  const random = seededRandom(seed);
  return Array.from(
    { length: count },
    (_, i) => -0.8 + 0.02 * standardNormal(random) + (i >= PHASE_ONE_READINGS ? shift : 0),
  );
}

describe("a reading of the check jar", () => {
  it("is the mean log ratio to clean air, and one stray sweep does not move it", () => {
    // Both channels fall to one half: ln(1/2), counted by hand.
    expect(jarScore(sniff)).toBeCloseTo(Math.log(0.5), 12);
  });

  it("is the same in any unit of resistance", () => {
    const scaled = (phase: { atMs: readonly number[]; ohm: readonly (readonly number[])[] }) => ({
      ...phase,
      ohm: phase.ohm.map((sweep) => sweep.map((ohm) => ohm * 1000)),
    });
    const other = {
      ...sniff,
      cleanAir: scaled(sniff.cleanAir ?? sniff.headspace),
      headspace: scaled(sniff.headspace),
    };
    expect(jarScore(other)).toBeCloseTo(jarScore(sniff) ?? Number.NaN, 12);
  });

  it("does not exist without clean air", () => {
    expect(jarScore({ ...sniff, cleanAir: undefined })).toBeNull();
  });
});

describe("the check jar's chart", () => {
  it("says nothing before its first readings have set the limits", () => {
    expect(judgeJar(readings(PHASE_ONE_READINGS, 0, 1))).toEqual({
      distances: [],
      limit: null,
      inControl: null,
    });
    expect(judgeJar(readings(PHASE_ONE_READINGS + 1, 0, 1)).inControl).not.toBeNull();
  });

  it("stays quiet for a steady sniffer: few alarms over many simulated households", () => {
    const alarms = Array.from(
      { length: 200 },
      (_, seed) => judgeJar(readings(25, 0, seed + 1)).inControl === false,
    );
    // Limits from ten readings are wide of the mark at times; one household in five would be too many.
    expect(alarms.filter(Boolean).length / 200).toBeLessThan(0.2);
  });

  it.each([0.08, -0.08])("notices a lasting step of %f (four spreads) within five readings", (shift) => {
    const noticed = Array.from(
      { length: 100 },
      (_, seed) => judgeJar(readings(PHASE_ONE_READINGS + 5, shift, seed + 1)).inControl === false,
    );
    expect(noticed.filter(Boolean).length).toBeGreaterThanOrEqual(90);
  });

  it("begins anew with a nose that was refreshed since, and with no other", () => {
    const at = (i: number) => new Date(Date.UTC(2026, 0, 1 + i)).toISOString();
    const drifted = readings(PHASE_ONE_READINGS + 5, 0.1, 3).map((score, i) => ({ at: at(i), score }));
    expect(judgeJarFor(drifted, null).inControl).toBe(false);
    expect(judgeJarFor(drifted, at(-1)).inControl).toBe(false);
    expect(judgeJarFor(drifted, at(40))).toEqual({ distances: [], limit: null, inControl: null });
    const later = readings(PHASE_ONE_READINGS + 2, 0, 4).map((score, i) => ({ at: at(41 + i), score }));
    expect(judgeJarFor([...drifted, ...later], at(40)).distances).toHaveLength(2);
  });

  it("is back in control when the readings are back", () => {
    const drifted = [...readings(PHASE_ONE_READINGS + 3, 0.1, 3)];
    expect(judgeJar(drifted).inControl).toBe(false);
    const back = [...drifted, ...Array<number>(30).fill(-0.8)];
    expect(judgeJar(back).inControl).toBe(true);
  });
});
