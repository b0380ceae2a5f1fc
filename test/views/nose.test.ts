import { expect, it } from "vitest";
import { comparisonView } from "../../src/views/comparisonView.js";
import { missRateView } from "../../src/views/settingsView.js";
import { noseHomeView } from "../../src/views/noseHomeView.js";
import { noseReportView } from "../../src/views/noseReportView.js";
import { refreshView } from "../../src/views/refreshView.js";
import { samplesView, type SampleNote } from "../../src/views/samplesView.js";
import { versionsView } from "../../src/views/versionsView.js";
import { teachView } from "../../src/views/teachView.js";
import {
  COMPARED,
  GAIN,
  NEW_NOSE,
  NOSE,
  OLD_NOSE,
  REFRESH_NEED,
  SOUND_CHECKS,
} from "../browser/gallery/fixtures/noses.js";
import { ENGLISH, NOW_MS } from "../browser/gallery/fixtures/words.js";
import { TEACH } from "../text/teachAt.js";

const SHOWN = [
  { group: "meat", misses: 1, plates: 82 },
  { group: "fish", misses: 0, plates: 24 },
];
const home = (acceptedMissRate: number, groups: readonly string[] = ["meat", "fish"]) =>
  noseHomeView(
    {
      active: { kind: "ready", nose: NOSE, demo: true },
      samples: 3,
      acceptedMissRate,
      groups,
      nowMs: NOW_MS,
      shown: SHOWN,
      refresh: null,
    },
    ENGLISH,
  ).card!;

it("says what miss rate it has shown, and how many more plates with the group would show the accepted one", () => {
  // 1 miss in 82: P(X <= 1 | 82, p) = 0.05 at p = 0.0565, by bisection of the binomial sum; with one miss 93 plates
  // show 5 % and 473 show 1 %, without a miss 59 and 299 (one-sided 95 % Clopper-Pearson).
  const [meat, fish] = home(0.05).groups;
  expect(meat?.clearing).toContain("Of 82 held-out plates with it, 1 would have been called “not smelled”");
  expect(meat?.clearing).toContain("at most 5.7% missed");
  expect(meat?.clearing).toContain("takes 11 more plates with it, none of them missed");
  expect(home(0.1).groups[0]?.clearing).toContain("Enough for your accepted rate of 10%");
  expect(home(0.01).groups[0]?.clearing).toContain("takes 391 more plates");
  expect(fish?.clearing).toContain("takes 35 more plates");
});

it("names what it cannot do, the groups it was never taught among it", () => {
  expect(home(0.05, ["meat", "egg"]).cannot).toContain("Judge egg: never taught.");
  expect(home(0.05).cannot.join(" ")).toContain("allergens");
});

const note = (i: number, truth: "present" | "absent", plate = `p${i}`): SampleNote => ({
  sniffId: `s${i}`,
  takenAt: "2026-11-25T12:00:00Z",
  dish: "",
  plate,
  occasion: "sitting",
  snifferId: "a",
  groups: { meat: truth },
  demo: false,
});
const samplesOf = (samples: readonly SampleNote[], demoIsIn: boolean) =>
  samplesView(
    { samples, demoIsIn, shown: 10, groups: ["meat"], acceptedMissRate: 0.05, suggestions: [] },
    ENGLISH,
  );
const countsOf = (samples: readonly SampleNote[]) => samplesOf(samples, false).counts[0]!;

it("offers the demo samples beside a practice plate of one's own, and no longer once they are in", () => {
  const practised = [{ ...note(1, "present"), demo: true }];
  expect(samplesOf(practised, false)).toMatchObject({
    bringInDemo: ENGLISH.text.nose.samples.bringInDemo,
    dropDemo: ENGLISH.text.nose.samples.dropDemo,
  });
  expect(samplesOf(practised, true).bringInDemo).toBeNull();
});

it("counts plates, not sniffs, and says how many more of which are needed", () => {
  const twice = countsOf([note(1, "present", "same"), note(2, "present", "same")]);
  expect(twice.present).toBe("1");
  expect(twice.needed).toBe("still needed: 58 with it, 9 without");
  const enough = [
    ...Array.from({ length: 59 }, (_, i) => note(i, "present")),
    ...Array.from({ length: 9 }, (_, i) => note(100 + i, "absent")),
  ];
  expect(countsOf(enough).needed).toBe("enough for your accepted miss rate");
  expect(countsOf(enough.slice(1)).needed).toBe("still needed: 1 with it");
  expect(countsOf(enough.slice(0, -1)).needed).toBe("still needed: 1 without it");
});

it("calls a new nose on plates of its own better or worse only where the intervals do not overlap", () => {
  const state = {
    ...TEACH,
    teaching: { kind: "proposed", nose: NEW_NOSE, before: NOSE, source: "taught", compared: [] },
  } as const;
  const { body } = teachView(state, ENGLISH);
  if (body.kind !== "proposed") throw new Error("not proposed");
  // Meat: 0.84..0.97 against 0.961..0.999 overlap; 0.79..0.94 against 0.67..0.825 overlap. Fish was not tried before.
  expect(body.groups[0]?.rows.map(({ change }) => change)).toEqual([
    "no clear difference: the intervals overlap",
    "no clear difference: the intervals overlap",
  ]);
  expect(body.groups[1]?.rows[0]?.change).toBe("nothing to compare it with");
  const [meat] = NEW_NOSE.report.groups;
  const apart = {
    ...NEW_NOSE,
    report: {
      ...NEW_NOSE.report,
      groups: [{ ...meat!, sensitivity: { events: 1, trials: 9, low: 0.1, high: 0.2 } }],
    },
  };
  const worse = teachView({ ...state, teaching: { ...state.teaching, nose: apart } }, ENGLISH).body;
  expect(worse.kind === "proposed" && worse.groups[0]?.rows[0]?.change).toContain("worse");
});

it("tells what leaks, what does not, what was not there to check, and which occasions to add", () => {
  const { leak } = noseReportView(NOSE, ENGLISH);
  expect(leak.rows.map(({ kind, leaks }) => [kind, leaks])).toEqual([
    ["cleanAir", true],
    ["airReadings", false],
    ["clock", false],
  ]);
  expect(leak.rows[0]?.text).toContain("tells fish");
  expect(leak.rows[1]?.text).toContain("not in these samples");
  expect(leak.add?.lines).toEqual([
    "Fish: on 6 of 12 occasions all plates were of one kind (2 Nov 2026, 5 Nov 2026, 9 Nov 2026, 12 Nov 2026 and 2 others). Add the other kind on such days.",
  ]);
  const sound = noseReportView({ ...NOSE, report: { ...NOSE.report, sampleChecks: SOUND_CHECKS } }, ENGLISH);
  expect(sound.leak.add).toBeNull();
  expect(sound.learning.more).toContain("have not made it better");
});

it("draws the learning curve to the edges of its field, and says what twice the plates would bring", () => {
  const { curve, more } = noseReportView(NOSE, ENGLISH).learning;
  // Counted by hand: 38, 76, 114 and 151 of 151 plates; 21.4, 15.2, 13.1 and 11.8 % wrong on a field up to 30 %.
  expect(curve?.points).toBe("25.2,28.7 50.3,49.3 75.5,56.3 100.0,60.7");
  expect(curve?.up).toBe("wrong, up to 30%");
  // Least squares line of the logarithms, worked out in plain Python: slope -0.3654; 1 - 2^-0.3654 = 0.224.
  expect(more).toContain("302 plates would make the log loss 22% lower");
});

it("opens the report of a nose from before there were checks, and says that they are missing", () => {
  const view = noseReportView(OLD_NOSE, ENGLISH);
  expect([view.leak.none, view.learning.none, view.occasionNone].every((text) => text !== null)).toBe(true);
  expect(view.groups.every(({ occasion }) => occasion === null)).toBe(true);
  expect(noseReportView(NOSE, ENGLISH).groups[0]?.occasion?.rates[0]?.percent).toBe("85%");
});

it("calls a line better or worse by the paired test, corrected for the number of lines", () => {
  const view = comparisonView(COMPARED, ENGLISH);
  // p 0.0003, 1, 1, 0.001 of four lines: corrected 0.0012, 1, 1, 0.002 (Benjamini and Hochberg 1995).
  expect(view.summary).toEqual([
    "Better: finding meat",
    "Worse: false alarms without fish",
    "No clear difference: false alarms without meat and finding fish",
  ]);
  expect(view.groups[0]?.rows[0]?.change).toContain("16 right only with the new one, 1 only with");
  // Three of three plates won back is a gain, but p = 2 x 0.5^3 = 0.25 does not show it.
  const few = comparisonView(GAIN, ENGLISH);
  expect(few.summary).toEqual(["No clear difference: finding meat and false alarms without meat"]);
  expect(few.notes[0]).toContain("So few plates");
});

it("asks for fresh samples by group, and only where they are worthwhile", () => {
  const view = refreshView(REFRESH_NEED, ENGLISH);
  expect(view?.missing).toEqual([
    "Meat: 3 more without it",
    "Fish: 4 more with it",
    "Egg: 5 more with it, 5 more without",
    "Dairy: enough fresh plates",
  ]);
  expect(view?.go).not.toBeNull();
  expect(refreshView({ ...REFRESH_NEED, freshPlates: 1 }, ENGLISH)?.go).toBeNull();
  expect(refreshView({ ...REFRESH_NEED, advice: { kind: "fresh" } }, ENGLISH)).toBeNull();
});

it("adds up the confusion table to the plates tried", () => {
  const [meat] = noseReportView(NOSE, ENGLISH).groups;
  // The fixture: 76 of 82 found, 77 of 86 quiet.
  expect(meat?.confusion?.rows.map(({ cells }) => cells)).toEqual([
    ["76", "6"],
    ["9", "77"],
  ]);
});

it("tells what each accepted miss rate takes, and what the nose has shown", () => {
  const view = missRateView(0.05, NOSE.report.groups, ENGLISH);
  expect(view.options.map(({ label }) => label)).toEqual([
    "10%: takes 29 plates without a miss",
    "5%: takes 59 plates without a miss",
    "1%: takes 299 plates without a miss",
  ]);
  // Only meat was tried; 6 misses in 82: P(X <= 6 | 82, p) = 0.05 at p = 0.13931, by bisection of the binomial sum.
  expect(view.shown).toEqual(["Meat: 6 missed in 82 tried plates shows at most 13.9%."]);
});

it("names the field of a refused line, and nothing where the whole line is at fault", () => {
  const faults = [
    { line: 7, field: "headspace.ohm.3", cause: "must be positive" },
    { line: 9, field: "", cause: "is not JSON" },
  ];
  const brought = { samples: 41, faults };
  const view = versionsView({ noses: [], activeId: null, decisions: [], fault: null, brought }, ENGLISH);
  expect(view.brought?.faults).toEqual(["Line 7, headspace.ohm.3: must be positive", "Line 9: is not JSON"]);
});
