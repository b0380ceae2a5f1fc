import { expect, it } from "vitest";
import type { ReleaseState } from "../../src/flows/releaseState.js";
import { findingView, type FindingSubject } from "../../src/views/findingView.js";
import { plateHomeView } from "../../src/views/plateHomeView.js";
import { releaseView } from "../../src/views/releaseView.js";
import { NOT_SMELLED, plateFinding } from "../browser/gallery/fixtures/findings.js";
import { FILLED } from "../browser/gallery/fixtures/plates.js";
import * as releases from "../browser/gallery/fixtures/releases.js";
import { ENGLISH, GERMAN, NOW_MS } from "../browser/gallery/fixtures/words.js";

const textOf = (state: ReleaseState) => releaseView(state, ENGLISH)?.text;
const leftText = (leftMs: number) =>
  textOf({ ...releases.RELEASING, now: { kind: "releasing", away: 0.5, leftMs } } as ReleaseState);

it("says in words how far the sniffer is", () => {
  expect(textOf(releases.RELEASING)).toBe("Clearing: back in clean air in about 40\u00a0s");
  expect(textOf(releases.PURGING)).toBe("Still clearing, time not yet known");
  expect(textOf(releases.LISTENING)).toBe("Still clearing, time not yet known");
  expect(textOf(releases.BACK)).toBe("Back in clean air");
  expect(textOf(releases.STUCK)).toMatch(/not coming back.*carry it into fresh air/i);
  expect(textOf(releases.GAVE_UP)).toMatch(/after 5\u00a0min.*fresh air/);
  expect(textOf({ kind: "off" })).toBeUndefined();
});

it.each([
  [0, "10\u00a0s"],
  [10_000, "10\u00a0s"],
  [10_001, "20\u00a0s"],
  [120_000, "2\u00a0min"],
  [120_001, "2\u00a0min 30\u00a0s"],
])("rounds %s ms up to %s: no fit is good to the second", (leftMs, said) => {
  expect(leftText(leftMs)).toMatch(new RegExp(`about ${said}$`));
});

it("has news to be read out only where it ends or asks for fresh air, not as the time runs down", () => {
  const news = releases.EVERY_RELEASE.filter((state) => releaseView(state, ENGLISH)?.isNews === true);
  expect(news).toEqual([releases.STUCK, releases.BACK, releases.GAVE_UP]);
});

it("names what a check costs before the start, everywhere but in clean air, and forbids none", () => {
  for (const words of [ENGLISH, GERMAN])
    for (const release of releases.EVERY_RELEASE) {
      const { check, release: told } = plateHomeView({ ...FILLED, release }, words);
      const costs = release.kind !== "off" && release.kind !== "back";
      expect([check.enabled, (told?.cost ?? "") !== ""]).toEqual([true, costs]);
    }
});

it("never changes a word of the finding", () => {
  const subject: Omit<FindingSubject, "release"> = {
    dish: "Broth",
    allergyGroups: ["fish"],
    cautions: [],
    hasProfile: true,
    nowMs: NOW_MS,
    served: null,
  };
  const shown = releases.EVERY_RELEASE.map((release) => {
    const { release: _release, ...others } = findingView(
      plateFinding(NOT_SMELLED),
      { ...subject, release },
      ENGLISH,
    );
    return others;
  });
  for (const other of shown) expect(other).toEqual(shown[0]);
});
