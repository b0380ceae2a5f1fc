import { expect, it } from "vitest";
import { missRateView } from "../../src/views/settingsView.js";
import { noseHomeView } from "../../src/views/noseHomeView.js";
import { noseReportView } from "../../src/views/noseReportView.js";
import { samplesView, type SampleNote } from "../../src/views/samplesView.js";
import { teachView } from "../../src/views/teachView.js";
import { NEW_NOSE, NOSE } from "../browser/gallery/fixtures/noses.js";
import { ENGLISH, NOW_MS } from "../browser/gallery/fixtures/words.js";

const home = (acceptedMissRate: number, groups: readonly string[] = ["meat", "fish"]) =>
  noseHomeView(
    {
      active: { kind: "ready", nose: NOSE, demo: true },
      samples: 3,
      acceptedMissRate,
      groups,
      nowMs: NOW_MS,
    },
    ENGLISH,
  ).card!;

it("says whether the plates can ever show the accepted miss rate", () => {
  // 59 plates without a miss show 5 %, 299 show 1 % (one-sided 95 % Clopper-Pearson; 1 - 0.05^(1/n)).
  expect(home(0.05).groups[0]?.clearing).toContain("Enough plates");
  expect(home(0.01).groups[0]?.clearing).toContain("takes 299 plates");
  expect(home(0.05).groups[1]?.clearing).toContain("takes 59 plates");
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
  groups: { meat: truth },
  demo: false,
});
const countsOf = (samples: readonly SampleNote[]) =>
  samplesView({ samples, shown: 10, groups: ["meat"], acceptedMissRate: 0.05, suggestions: [] }, ENGLISH)
    .counts[0]!;

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

it("calls a new nose better or worse only where the intervals do not overlap", () => {
  const state = {
    teaching: { kind: "proposed", nose: NEW_NOSE, before: NOSE },
    samples: 1,
    plates: 1,
    name: "",
  } as const;
  const { body } = teachView(state, ENGLISH);
  if (body.kind !== "proposed") throw new Error("not proposed");
  // Meat: 0.84..0.97 against 0.961..0.999 overlap; 0.79..0.94 against 0.67..0.825 overlap. Fish was not tried before.
  expect(body.groups[0]?.rows.map(({ change }) => change)).toEqual([
    "no clear difference: the intervals overlap",
    "no clear difference: the intervals overlap",
  ]);
  expect(body.groups[1]?.rows[0]?.change).toBe("new");
  const [meat] = NEW_NOSE.report.groups;
  const apart = {
    ...NEW_NOSE,
    report: {
      ...NEW_NOSE.report,
      groups: [{ ...meat!, sensitivity: { events: 1, trials: 9, low: 0.1, high: 0.2 } }],
    },
  };
  const worse = teachView(
    { ...state, teaching: { kind: "proposed", nose: apart, before: NOSE } },
    ENGLISH,
  ).body;
  expect(worse.kind === "proposed" && worse.groups[0]?.rows[0]?.change).toContain("worse");
});

it("reports a leak only where clean air does better than chance with its whole interval", () => {
  const view = noseReportView(
    NOSE,
    [
      { group: "meat", auc: 0.6, low: 0.5, high: 0.7 },
      { group: "fish", auc: 0.6, low: 0.51, high: 0.69 },
    ],
    ENGLISH,
  );
  expect(view.leak.rows.map(({ leaks }) => leaks)).toEqual([false, true]);
  expect(noseReportView(NOSE, null, ENGLISH).leak.none).not.toBeNull();
});

it("adds up the confusion table to the plates tried", () => {
  const [meat] = noseReportView(NOSE, null, ENGLISH).groups;
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
