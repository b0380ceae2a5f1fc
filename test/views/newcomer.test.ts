// What somebody who opens the app for the first time must not misread. Each was stumbled over by going through the app.
import { expect, it } from "vitest";
import { emptyProfile } from "../../src/diet/profile.js";
import { ENGLISH, GERMAN } from "../browser/gallery/fixtures/words.js";
import { EVERY_SUGGESTION } from "../browser/gallery/fixtures/meals.js";
import { NOSE } from "../browser/gallery/fixtures/noses.js";
import { allergyFormView } from "../../src/views/allergiesView.js";
import { dataView, importPlanView, type DataState } from "../../src/views/dataView.js";
import { dietFormView } from "../../src/views/dietFormView.js";
import { noseGroupView } from "../../src/views/noseHomeView.js";
import { suggestionsView } from "../../src/views/suggestionsView.js";
import { teachView } from "../../src/views/teachView.js";
import { handMadeNose } from "../finding/handMadeNose.js";
import { TEACH } from "../text/teachAt.js";

const nose = (present: number, absent: number) =>
  handMadeNose({ present: Array<number>(present).fill(6), absent: Array<number>(absent).fill(-6) });

it("says which groups are smelled for although none is chosen", () => {
  const profile = emptyProfile("EU");
  const textFor = (chosen: typeof profile, groups: readonly string[]) =>
    dietFormView(chosen, "", groups, ENGLISH).groups.text;
  expect(textFor(profile, [])).toContain("all are smelled for");
  expect(textFor(profile, ["meat", "shellfish"])).toContain("meat and shellfish");
  expect(textFor({ ...profile, avoidedGroups: ["meat"] }, ["meat", "shellfish"])).toMatch(/: shellfish\.$/);
  expect(textFor({ ...profile, avoidedGroups: ["meat"] }, ["meat"])).not.toContain("Already");
});

it("tells where one's own allergen goes by the name that it has in the list", () => {
  const draft = { choice: "", own: "", severity: "unknown", note: "", isNew: true } as const;
  const { hint, options } = allergyFormView(draft, "EU", ENGLISH).allergen;
  expect(hint).toContain(options.at(-1)?.label ?? "no option");
});

it("says in the reader's language what the legal list covers", () => {
  const draft = { choice: "egg", own: "", severity: "serious", note: "", isNew: true } as const;
  // Source: Regulation (EU) No 1169/2011, Annex II, item 3, secondary quotation.
  expect(allergyFormView(draft, "EU", ENGLISH).legal).toMatch(/: Eggs and products thereof$/);
  expect(allergyFormView(draft, "EU", GERMAN).legal).toMatch(/: Ei$/);
  expect(allergyFormView({ ...draft, choice: "pineNut" }, "EU", GERMAN).legal).toMatch(/^Nicht auf/);
});

it("says before a nose is taken what only the one in use can say", () => {
  const losesWith = (before: ReturnType<typeof nose> | null, after: ReturnType<typeof nose>) => {
    const teaching = { kind: "proposed", nose: after, before, source: "taught", compared: [] } as const;
    const { body } = teachView({ ...TEACH, acceptedMissRate: 0.1, teaching }, ENGLISH);
    return body.kind === "proposed" ? body.loses : ["not proposed"];
  };
  expect(losesWith(nose(29, 20), nose(3, 3))).toEqual([
    "Lost with the new one: it can never say “smelled” for meat yet, the one in use can.",
    "Lost with the new one: it can never say “not smelled” for meat yet, the one in use can.",
  ]);
  expect(losesWith(nose(29, 20), nose(28, 20))).toHaveLength(1);
  expect(losesWith(nose(3, 3), nose(29, 20))).toEqual([]);
  expect(losesWith(null, nose(3, 3))).toEqual([]);
});

it("counts one plate as one plate", () => {
  const [group] = NOSE.report.groups;
  if (group === undefined) throw new Error("the fixture has no group");
  const shown = { group: "meat", misses: 0, plates: 28 };
  const { clearing, alarming } = noseGroupView({ ...group, platesAbsent: 8 }, shown, 0.1, ENGLISH);
  expect(clearing).toContain("takes 1 more plate with it");
  expect(alarming).toContain("takes 1 more plate without it");
  expect(noseGroupView(group, { ...shown, plates: 27 }, 0.1, ENGLISH).clearing).toContain("2 more plates");
});

it("says why practice plates are missing from what would help the nose", () => {
  expect(suggestionsView(EVERY_SUGGESTION, true, ENGLISH)?.note).toContain("Practice plates are not counted");
  expect(suggestionsView(EVERY_SUGGESTION, false, ENGLISH)?.note).toBeNull();
});

const DATA: DataState = {
  meals: 0,
  photos: 0,
  sniffs: 0,
  noses: 0,
  sizeBytes: null,
  persisted: false,
  lastBackupAt: null,
  setAside: 0,
  hasDemo: false,
  fault: null,
  saving: false,
  erase: null,
  nowMs: 0,
};

it("tells what is wrong with a backup beside the button that was tapped", () => {
  const cause = { kind: "damaged" } as const;
  const into = dataView({ ...DATA, fault: { way: "in", cause } }, ENGLISH);
  expect([into.in.fault !== null, into.out.fault]).toEqual([true, null]);
  const out = dataView({ ...DATA, fault: { way: "out", cause: { kind: "tooLarge" } } }, ENGLISH);
  expect([out.in.fault, out.out.fault !== null]).toEqual([null, true]);
});

it("names diet and allergies where a backup's settings stand against one's own", () => {
  const settings = { table: "settings", id: "settings", changedAt: null } as const;
  const differing = {
    mine: { ...settings, fingerprint: "" },
    theirs: { ...settings, demo: false, value: {} },
    choice: "keepMine",
    choices: ["keepMine", "takeTheirs"],
  } as const;
  const plan = { fresh: [], same: [], differing: [differing] };
  const [shown] = importPlanView(plan, "2026-11-28T12:00:00Z", false, ENGLISH).differing;
  expect(shown?.name).toMatch(/diet and allergies/);
});
