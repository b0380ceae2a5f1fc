import { expect, it } from "vitest";
import { isClearing, type ReleaseState } from "../../src/flows/releaseState.js";
import { releaseView } from "../../src/views/releaseView.js";
import * as releases from "../browser/gallery/fixtures/releases.js";
import { ENGLISH, GERMAN } from "../browser/gallery/fixtures/words.js";

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

it("names what a check costs before the start, everywhere but in clean air", () => {
  for (const words of [ENGLISH, GERMAN])
    for (const release of releases.EVERY_RELEASE) {
      const cost = releaseView(release, words)?.cost ?? null;
      expect(cost !== null).toBe(release.kind !== "off" && release.kind !== "back");
      expect(cost !== null).toBe(isClearing(release));
    }
});
