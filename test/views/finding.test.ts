import { expect, it } from "vitest";
import fc from "fast-check";
import { SMELLED_LEAST_PROBABILITY } from "../../src/finding/bands.js";
import type { GroupFinding } from "../../src/finding/finding.js";
import { bandView } from "../../src/views/bandView.js";
import { findingCardView } from "../../src/views/findingCardView.js";
import { findingView, type FindingSubject } from "../../src/views/findingView.js";
import { keptFinding } from "../../src/views/keptFinding.js";
import { reasonView } from "../../src/views/reasonView.js";
import {
  ALLERGY,
  EVERY_REASON,
  NO_NOSE,
  NOT_SMELLED,
  plateFinding,
  SMELLED,
  UNCERTAIN,
} from "../browser/gallery/fixtures/findings.js";
import { ENGLISH, GERMAN, NOW_MS } from "../browser/gallery/fixtures/words.js";

const SUBJECT: FindingSubject = {
  dish: "Broth",
  allergyGroups: [],
  cautions: [{ id: "stock", text: "“broth” often contains meat", because: null }],
  nowMs: NOW_MS,
  hasProfile: true,
  served: null,
};
const show = (...groups: GroupFinding[]) => findingView(plateFinding(...groups), SUBJECT, ENGLISH);
const context = { acceptedMissRate: 0.05, allergyGroups: [], nowMs: NOW_MS };

it("says with every uncertain finding that it is not to be relied on", () => {
  // The design: uncertain reads "uncertain, do not rely on this".
  const card = findingCardView(UNCERTAIN, context, ENGLISH);
  expect(card.spoken).toBe("Shellfish: Uncertain, do not rely on this");
  expect(findingCardView(SMELLED, context, ENGLISH).addition).toBeNull();
});

it("lets the loudest finding lead: smelled, then uncertain, then not smelled", () => {
  expect(show(NOT_SMELLED, UNCERTAIN, SMELLED).headline).toBe("Meat: smelled");
  expect(show(NOT_SMELLED, UNCERTAIN).headline).toBe("No clear answer");
  expect(show(NOT_SMELLED).headline).toBe("Fish: not smelled");
  expect(show(NOT_SMELLED, SMELLED).cards.map(({ tone }) => tone)).toEqual(["smelled", "notSmelled"]);
});

it("keeps every caution beside every finding, the negative one too", () => {
  for (const finding of [SMELLED, NOT_SMELLED, UNCERTAIN, NO_NOSE])
    expect(show(finding).cautions.items).toEqual(SUBJECT.cautions);
});

it("tells somebody allergic that no nose clears a plate, and to keep away from steam", () => {
  // The design, section 3: a finding can only raise caution; steam can carry protein.
  const view = findingView(plateFinding(ALLERGY), { ...SUBJECT, allergyGroups: ["egg"] }, ENGLISH);
  expect(view.steam).toContain("steam can carry protein");
  expect(view.cards[0]?.tone).toBe("uncertain");
  expect(view.cards[0]?.allergyNote).toContain("never clear a plate");
});

it.each([
  ["English", ENGLISH],
  ["German", GERMAN],
])("has a sentence and a remedy of its own for every reason, in %s", (_language, words) => {
  const told = EVERY_REASON.map((reason) => reasonView(reason, words));
  expect(new Set(told.map(({ sentence }) => sentence)).size).toBe(EVERY_REASON.length);
  for (const { sentence, remedy } of told) {
    expect(sentence).not.toMatch(/NaN|undefined|null|\[object/);
    expect(remedy.length).toBeGreaterThan(10);
  }
});

it("puts the design's own numbers into words", () => {
  // The design, section 3: 0 misses in 14 plates shows no better than 1 - 0.05^(1/14) = 19.3 %; 5 % takes 59.
  const [reason] = EVERY_REASON.filter(({ kind }) => kind === "tooFewPlates");
  const { sentence } = reasonView(reason!, ENGLISH);
  expect(sentence).toContain("Only 14 plates");
  expect(sentence).toContain("19.3%");
  expect(sentence).toContain("takes 45 more");
});

it("draws the uncertain stretch from the accepted miss rate to the least probability of smelled", () => {
  const band = bandView(SMELLED, 0.05, ENGLISH);
  expect([band.uncertainFrom, band.uncertainTo]).toEqual([0.05, SMELLED_LEAST_PROBABILITY]);
  expect(band.interval).toEqual({ from: 0.83, to: 0.985 });
});

it("shows no value where none can be computed", () => {
  const card = findingCardView(NO_NOSE, context, ENGLISH);
  expect(card.band.interval).toBeNull();
  expect(card.band.point).toBeNull();
  expect(card.chance).not.toMatch(/\d/);
  expect(card.basis).toBeNull();
});

it("never words an uncertain finding as anything else, whatever the numbers", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (probability) => {
      const card = findingCardView({ ...UNCERTAIN, probability }, context, ENGLISH);
      return card.tone === "uncertain" && card.verdict === "Uncertain" && card.addition !== null;
    }),
  );
});

it("reveals after practice what was right, wrong and left open", () => {
  const served = { dishName: "Pork dumplings", groups: { meat: "present", fish: "present" } } as const;
  const view = findingView(plateFinding(SMELLED, NOT_SMELLED, UNCERTAIN), { ...SUBJECT, served }, ENGLISH);
  expect(view.reveal?.lines).toEqual([
    "The finding was wrong for: fish.",
    "The finding matched for: meat.",
    "Left uncertain: shellfish.",
  ]);
});

it("names what a longer sniff would mend last, for it helps only once the rest is put right", () => {
  const reasons = [
    { kind: "tooFewSweeps", sweeps: 3, needed: 12 },
    { kind: "saturated", channels: 1 },
  ] as const;
  const card = findingCardView({ ...UNCERTAIN, reasons }, context, ENGLISH);
  expect(card.reasons?.items.map(({ kind }) => kind)).toEqual(["saturated", "tooFewSweeps"]);
});

it("reads a kept reason of another version as unknown, and keeps the finding uncertain", () => {
  const kept = keptFinding({
    ...plateFinding(),
    groups: [{ ...UNCERTAIN, reasons: [{ kind: "somethingNew", value: 3 }] }],
  });
  const card = findingCardView(kept.groups[0]!, context, ENGLISH);
  expect(card.tone).toBe("uncertain");
  expect(card.reasons?.items[0]?.sentence).toContain("another version");
});

it("keeps a finding the same through being kept", () => {
  const finding = plateFinding(SMELLED, NOT_SMELLED, UNCERTAIN);
  expect(keptFinding(finding)).toEqual(finding);
});

it("does not say that no caution is known to someone who has not said what they avoid", () => {
  const cautionless = { ...SUBJECT, cautions: [] };
  const view = (hasProfile: boolean) =>
    findingView(plateFinding(NOT_SMELLED), { ...cautionless, hasProfile }, ENGLISH).cautions.empty;
  expect(view(true)).toBe(ENGLISH.text.finding.cautionsNone);
  expect(view(false)).toBe(ENGLISH.text.finding.cautionsNoProfile);
});
