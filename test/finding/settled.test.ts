import { describe, expect, it } from "vitest";
import { findPlate } from "../../src/finding/findPlate.js";
import type { FindingRequest, PlateFinding } from "../../src/finding/finding.js";
import { likelyTimeMs } from "../../src/finding/likelyTime.js";
import { settled } from "../../src/finding/settled.js";
import { withBelief } from "../../src/finding/withBelief.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { handMadeNose, handMadeSniff, spread } from "./handMadeNose.js";

const NOSE = handMadeNose({
  present: spread(60, 3, 5),
  absent: spread(60, -5, -3),
  fromMs: [6000, 14_000, 24_000],
});
const REQUEST = { groups: ["meat"], acceptedMissRate: 0.1, allergyGroups: [] };
const LIMIT = 30_000;

/** The findings that the app would have had, sweep by sweep. */
function live(whole: Sniff, request: FindingRequest = REQUEST): PlateFinding[] {
  return whole.headspace.atMs.map((_, i) =>
    findPlate(
      NOSE,
      {
        ...whole,
        headspace: { atMs: whole.headspace.atMs.slice(0, i + 1), ohm: whole.headspace.ohm.slice(0, i + 1) },
      },
      request,
    ),
  );
}

const stopsAt = (findings: PlateFinding[]) =>
  findings.findIndex((_, i) => settled(findings.slice(0, i + 1), LIMIT).kind === "settled");

describe("when to stop", () => {
  it("a clear plate: not at the first look but when the second confirms it, 14 s in", () => {
    const findings = live(handMadeSniff(4));
    expect(findings[3]!.groups[0]!.reasons).toEqual([{ kind: "stillMoving" }]);
    expect(stopsAt(findings)).toBe(7);
    expect(findings[7]!.groups[0]!.verdict).toBe("smelled");
  });

  it("a finding stays the same between two looks, however many sweeps come in", () => {
    const findings = live(handMadeSniff((sweep) => 4 - 0.1 * sweep));
    expect(findings[8]!.groups[0]!.probability).toBe(findings[10]!.groups[0]!.probability);
  });

  it("a plate between the groups is sniffed to the end and stays uncertain", () => {
    const findings = live(handMadeSniff(0));
    expect(stopsAt(findings)).toBe(-1);
    expect(settled(findings, LIMIT)).toEqual({ kind: "outOfTime" });
  });

  it("what no sweep can mend ends it at once: a faulty heater", () => {
    expect(stopsAt(live(handMadeSniff(-4, { flags: ["heaterFault"] })))).toBe(0);
  });

  it("sweeps lost early do not end it: their share falls as more come whole", () => {
    expect(stopsAt(live(handMadeSniff(4, { flags: ["sweepsLost"] })))).toBe(-1);
  });

  it("an allergy never ends it early: what is not smelled yet may still be smelled", () => {
    const allergic = { ...REQUEST, allergyGroups: ["meat"] };
    expect(stopsAt(live(handMadeSniff(-4), allergic))).toBe(-1);
    const late = live(
      handMadeSniff((sweep) => (sweep < 4 ? -4 : 4)),
      allergic,
    );
    expect(late.at(-1)!.groups[0]!.verdict).toBe("smelled");
  });

  it("nothing sniffed yet is still moving", () => {
    expect(settled([], LIMIT)).toEqual({ kind: "stillMoving" });
  });
});

it("the time it is likely to take: the second look, if half of the held-out plates were told by then", () => {
  expect(likelyTimeMs(NOSE, ["meat"], 0.1)).toBe(14_000);
  expect(likelyTimeMs(NOSE, ["egg"], 0.1)).toBeNull();
  const mixed = (present: number) =>
    handMadeNose({
      present: spread(present, 3, 5),
      absent: spread(60, -5, -3),
      fromMs: [6000, 14_000, 24_000],
    });
  // An allergy is never cleared: plates without it run to the last horizon, and only those with it are told.
  expect(likelyTimeMs(mixed(60), ["meat"], 0.1)).toBe(14_000);
  expect(likelyTimeMs(mixed(70), ["meat"], 0.1, ["meat"])).toBe(14_000);
  expect(likelyTimeMs(mixed(50), ["meat"], 0.1, ["meat"])).toBe(24_000);
  // 50 present plates can never show 1 %: nothing is cleared, and the plates without meat are more than half.
  expect(likelyTimeMs(mixed(50), ["meat"], 0.01)).toBe(24_000);
});

it("Bayes as published: 2 % before, likelihood ratio 18.75, 27.68 % after", () => {
  // Source: Caraguel and Vanderstichel 2013, Evid. Based Med. 18, 125-128 (ST-D1). Half of the taught plates had the
  // group, so a probability of 18.75 / 19.75 is that likelihood ratio.
  const belief = withBelief(18.75 / 19.75, 0.5, 0.02);
  expect(belief.likelihoodRatio).toBeCloseTo(18.75, 9);
  expect(belief.after).toBeCloseTo(0.2768, 4);
});
