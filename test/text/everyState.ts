/** Speaks every kind of reason, fault and cause that the gallery does not show, so that no word is missed. */
import { NOT_FOLLOWING } from "../../src/flows/releaseState.js";
import { speakChecks } from "./speakChecks.js";
import { speakMoved } from "./speakMoved.js";
import { TEACH } from "./teachAt.js";
import { speakSniffers } from "./speakSniffers.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import { DIETS, emptyProfile, SEVERITIES } from "../../src/diet/profile.js";
import { JURISDICTIONS } from "../../src/diet/jurisdiction.js";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import type { TeachProblem } from "../../src/flows/teachState.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";
import { ACTIVE_NOSE_ID, BACKUP_TABLES } from "../../src/meals/backupContents.js";
import { MEAL_OUTCOMES, newMeal, TRUTH_SOURCES } from "../../src/meals/meal.js";
import { CHOICES } from "../../src/nose/models.js";
import type { Words } from "../../src/text/catalogue.js";
import { allergiesView, allergyFormView } from "../../src/views/allergiesView.js";
import { claimTexts } from "../../src/views/mealFormView.js";
import { dataView, importPlanView } from "../../src/views/dataView.js";
import { ALL_DAYS, dayRangeView } from "../../src/views/dayRangeView.js";
import { dietFormView } from "../../src/views/dietFormView.js";
import { dietCautionView } from "../../src/views/dietCautionView.js";
import { findingView, type FindingSubject } from "../../src/views/findingView.js";
import { firstRunView, FIRST_RUN_STEPS } from "../../src/views/firstRunView.js";
import { keptFinding } from "../../src/views/keptFinding.js";
import { mealDetailView } from "../../src/views/mealDetailView.js";
import { mealFormView } from "../../src/views/mealFormView.js";
import { noseHomeView } from "../../src/views/noseHomeView.js";
import { noseReportView } from "../../src/views/noseReportView.js";
import { plateHomeView } from "../../src/views/plateHomeView.js";
import { releaseView } from "../../src/views/releaseView.js";
import { reviewView } from "../../src/views/reviewView.js";
import { reviewMeals } from "../../src/meals/review.js";
import { refreshView } from "../../src/views/refreshView.js";
import { comparisonView } from "../../src/views/comparisonView.js";
import { samplesView } from "../../src/views/samplesView.js";
import { shellView } from "../../src/views/shellView.js";
import { standingView } from "../../src/views/standingView.js";
import { suggestionsView } from "../../src/views/suggestionsView.js";
import { teachView } from "../../src/views/teachView.js";
import { versionsView, type NoseImportFault } from "../../src/views/versionsView.js";
import { youHomeView } from "../../src/views/youHomeView.js";
import { handMadeNose } from "../finding/handMadeNose.js";
import * as found from "../browser/gallery/fixtures/findings.js";
import { BARE_MEAL, EVERY_SUGGESTION, FULL_MEAL } from "../browser/gallery/fixtures/meals.js";
import { EVERY_RELEASE } from "../browser/gallery/fixtures/releases.js";
import { FILLED } from "../browser/gallery/fixtures/plates.js";
import { COMPARED, NOSE, OLD_NOSE, REFRESH_NEED } from "../browser/gallery/fixtures/noses.js";
import { NOW_MS } from "../browser/gallery/fixtures/words.js";

const PROBLEMS: readonly TeachProblem[] = [
  { kind: "noSamples" },
  { kind: "noKnownGroup" },
  { kind: "tooFewFresh", plates: 1 },
  { kind: "busy" },
  { kind: "failed", detail: "x" },
  { kind: "workerCrashed", detail: "x" },
  { kind: "badNose", error: { kind: "otherChannels" } },
  { kind: "storage", detail: "x" },
];

const OFFER = { kind: "proposed", nose: NOSE, before: NOSE, source: "taught", compared: [] } as const;

export function speakEveryState(words: Words): void {
  speakChecks(words);
  speakShell(words);
  speakSniffers(words);
  speakFindings(words);
  speakMeals(words);
  speakNoses(words);
  speakMoved(words);
  speakYou(words);
}

function speakShell(words: Words): void {
  shellView(
    {
      place: "plate",
      hrefOf: () => "#",
      checkRunning: false,
      updateWaiting: true,
      online: false,
      kept: true,
      pieceMissing: false,
      toast: { text: "x", undoable: true },
    },
    words,
  );
}

function speakFindings(words: Words): void {
  const subject = {
    dish: "",
    allergyGroups: ["egg"],
    cautions: [],
    hasProfile: true,
    nowMs: NOW_MS,
    release: NOT_FOLLOWING,
    served: null,
  };
  type Groups = Parameters<typeof found.plateFinding>;
  const showTo = (change: Partial<FindingSubject>, ...groups: Groups) =>
    findingView(found.plateFinding(...groups), { ...subject, ...change }, words);
  const served = { dishName: "x", groups: { meat: "absent", fish: "absent", shellfish: "present" } } as const;
  showTo({});
  showTo({ hasProfile: false });
  showTo({}, ...FOOD_GROUPS.map((group) => ({ ...found.SMELLED, group })));
  showTo({}, { ...found.UNCERTAIN, reasons: found.EVERY_REASON });
  const later = { ...found.UNCERTAIN, reasons: [{ kind: "fromLater" }] };
  findingView(keptFinding({ ...found.plateFinding(), groups: [later] }), subject, words);
  showTo({ served }, found.SMELLED, found.NOT_SMELLED, found.UNCERTAIN);
  showTo({ served: { dishName: "x", groups: {} } }, found.NOT_SMELLED);
  for (const [dish, hasProfile] of [
    ["", true],
    ["x", true],
    ["", false],
  ] as const)
    plateHomeView({ ...FILLED, dish, hasProfile, cautions: [], draftAt: "2026-11-25T18:00:00Z" }, words);
  plateHomeView({ ...FILLED, noseName: null }, words);
  plateHomeView({ ...FILLED, groups: [] }, words);
  for (const release of EVERY_RELEASE) releaseView(release, words);
}

function speakMeals(words: Words): void {
  claimTexts(["vegan"], words);
  const state = {
    allergyGroups: [],
    sample: "none" as const,
    nowMs: NOW_MS,
    practice: true,
    suggestions: EVERY_SUGGESTION,
  };
  suggestionsView(EVERY_SUGGESTION, true, words, EVERY_SUGGESTION.length);
  for (const outcome of MEAL_OUTCOMES)
    mealDetailView({ ...state, sample: "kept", meal: { ...FULL_MEAL, outcome } }, words);
  mealDetailView({ ...state, sample: "keeping", meal: FULL_MEAL }, words);
  for (const source of TRUTH_SOURCES)
    mealDetailView({ ...state, meal: { ...FULL_MEAL, truth: { ...FULL_MEAL.truth!, source } } }, words);
  for (const onsetMs of [undefined, 1, 2_400_000, 4 * 3_600_000, 20 * 3_600_000])
    mealDetailView(
      { ...state, meal: { ...FULL_MEAL, reaction: { ...FULL_MEAL.reaction!, onsetMs, severity: 2 } } },
      words,
    );
  const wrong = {
    ...FULL_MEAL,
    truth: { ...FULL_MEAL.truth!, groups: { meat: "absent", fish: "present" } },
  } as const;
  mealDetailView({ ...state, meal: wrong }, words);
  mealDetailView({ ...state, meal: BARE_MEAL }, words);
  reviewView(reviewMeals([wrong, FULL_MEAL], { claimDenies: () => true }), words);
  reviewView(reviewMeals([newMeal("x", "2026-11-25T18:00:00Z")]), words);
  for (const fault of ["empty", "order", "future"] as const) dayRangeView(ALL_DAYS, fault, words);
  const draft = { dish: "", place: "", when: "", note: "", claims: "", photoIds: ["a"], outcome: null };
  for (const photoFault of ["tooLarge", "notAnImage"] as const)
    for (const status of ["editing", "saving", "failed"] as const)
      mealFormView({ draft, isNew: false, places: [], photoFault, status }, words);
}

function speakNoses(words: Words): void {
  const home = {
    samples: 1,
    acceptedMissRate: 0.01,
    groups: ["egg"],
    nowMs: NOW_MS,
    shown: [],
    refresh: null,
  };
  const few = { ...NOSE.report.groups[0]!, platesAbsent: 3 };
  const shown = [{ group: "meat", misses: 0, plates: 900 }];
  const scarce = { ...NOSE, report: { ...NOSE.report, groups: [few] } };
  noseHomeView({ ...home, shown, active: { kind: "ready", nose: scarce, demo: false } }, words);
  for (const chosen of CHOICES) {
    const report = {
      ...NOSE.report,
      split: "occasion" as const,
      notes: ["noCleanAir", "noHumidityCorrection", "oneOccasion", "constantChannels"] as const,
      leftOut: [
        { why: "otherSniffer", sniffs: 1 },
        { why: "otherChannels", sniffs: 1 },
        { why: "noCleanAir", sniffs: 1 },
        { why: "noKnownGroup", sniffs: 1 },
        { why: "duplicate", sniffs: 1 },
      ] as const,
    };
    const nose = { ...NOSE, chosen, report };
    noseHomeView({ ...home, active: { kind: "ready", nose, demo: false } }, words);
    noseReportView(nose, words);
  }
  speakSampleChecks(words);
  for (const problem of PROBLEMS) teachView({ ...TEACH, teaching: { kind: "problem", problem } }, words);
  for (const done of [null, 0.5])
    for (const stage of ["teaching", "checks"] as const)
      teachView(
        { ...TEACH, teaching: { kind: "teaching", done, stage, refresh: true, cancelling: done === null } },
        words,
      );
  const better = {
    ...NOSE,
    report: {
      ...NOSE.report,
      groups: NOSE.report.groups.map((group) => ({
        ...group,
        sensitivity: { events: 1, trials: 9, low: 0, high: 0.1 },
        specificity: { events: 9, trials: 9, low: 0.999, high: 1 },
      })),
    },
  };
  for (const before of [null, NOSE, better])
    for (const source of ["taught", "file", "version"] as const)
      teachView({ ...TEACH, teaching: { ...OFFER, before, source } }, words);
  teachView({ ...TEACH, teaching: { ...OFFER, nose: better } }, words);
  const before = handMadeNose({ present: Array<number>(29).fill(6), absent: Array<number>(20).fill(-6) });
  teachView({ ...TEACH, teaching: { ...OFFER, before } }, words);
  const faults: readonly NoseImportFault[] = [
    { kind: "notJson", detail: "" },
    { kind: "otherFormat", format: "x" },
    { kind: "otherChannels" },
    { kind: "badField", field: "x", detail: "" },
    { kind: "tooLarge" },
    { kind: "unreadable" },
    { kind: "alreadyKept" },
    { kind: "busy" },
    ...Object.keys(words.text.trouble.kinds).map((kind) => ({ kind }) as NoseImportFault),
  ];
  const decisions = (["taught", "accepted", "rejected", "rolledBack"] as const).map((decision) => ({
    noseId: "a",
    decision,
    at: "2026-11-25T18:00:00Z",
  }));
  for (const fault of faults)
    versionsView({ noses: [], activeId: null, decisions, fault, brought: { samples: 1, faults: [] } }, words);
  const sample = { snifferId: "a", takenAt: "2026-11-25T18:00:00Z", dish: "", demo: false };
  for (const [presents, absents] of [
    [0, 0],
    [0, 9],
    [59, 0],
    [59, 9],
  ] as const) {
    const make = (truth: "present" | "absent", count: number) =>
      Array.from({ length: count }, (_, i) => ({
        ...sample,
        sniffId: `${truth}${i}`,
        plate: `${truth}${i}`,
        occasion: "x",
        groups: { meat: truth },
      }));
    const samples = [...make("present", presents), ...make("absent", absents)];
    samplesView(
      {
        samples,
        demoIsIn: samples.length > 0,
        shown: 1,
        groups: ["meat"],
        acceptedMissRate: 0.05,
        suggestions: [],
      },
      words,
    );
  }
}

/** Leaks of every kind and none, few plates, fresh samples wanted after drift. */
function speakSampleChecks(words: Words): void {
  const leaks = { checks: [], missing: [], oneSided: [] };
  const leak = { kind: "clock", group: "meat", auc: 0.9, limit: 0.6, leaks: true } as const;
  for (const checks of [[], [leak]])
    noseReportView(
      {
        ...NOSE,
        report: { ...NOSE.report, sampleChecks: { leaks: { ...leaks, checks }, learningCurve: [] } },
      },
      words,
    );
  noseReportView(OLD_NOSE, words);
  noseReportView({ ...OLD_NOSE, occasionsTaught: 2 }, words);
  refreshView({ ...REFRESH_NEED, advice: { kind: "worthwhile", why: "drift", platesPerGroup: 5 } }, words);
  const tiny = COMPARED.map((one) => ({ ...one, found: { ...one.found, p: 1e-9 } }));
  comparisonView(tiny, words);
}

function speakYou(words: Words): void {
  const profile = {
    ...emptyProfile("EU"),
    diets: DIETS,
    avoidedGroups: FOOD_GROUPS,
    allergies: SEVERITIES.map((severity) => ({ allergen: "egg", severity, note: "" })),
    intolerances: ["lactose", "gluten"],
    coeliac: true,
    ownWords: ["suet"],
  };
  allergiesView(profile, words);
  const own = { choice: "own", own: "coriander", severity: "mild", note: "", isNew: false } as const;
  allergyFormView(own, "EU", words);
  const text = "cheese soup with bacon, egg noodles, suet, gelatine, coconut milk, E471, vegan";
  for (const jurisdiction of JURISDICTIONS) {
    const allergies = SUBSTANCES.filter((row) => "allergen" in row).map(({ id }) => ({
      allergen: id,
      severity: "unknown" as const,
      note: "",
    }));
    const allergic = { ...profile, allergies, jurisdiction };
    const menu = `${text}, carbonarra, lactitol, gluten-free pasta, pine nuts, buckwheat, almond, walnut, celery`;
    for (const caution of cautionsFor({ text: menu, profile: allergic }))
      dietCautionView(caution, jurisdiction, words);
    standingView(allergic, words);
  }
  for (const jurisdiction of JURISDICTIONS)
    youHomeView(
      {
        profile: { ...profile, jurisdiction },
        allergenNames: [],
        groups: [],
        profileLost: true,
        acceptedMissRate: 0.1,
      },
      words,
    );
  for (const groups of [[], ["meat"]]) dietFormView(profile, "", groups, words);
  const data = {
    meals: 1,
    photos: 1,
    sniffs: 1,
    noses: 1,
    sizeBytes: 1,
    persisted: true,
    lastBackupAt: null,
    setAside: 1,
    hasDemo: true,
    saving: true,
    erase: { sure: true },
    nowMs: NOW_MS,
  };
  for (const cause of [
    { kind: "tooLarge" },
    { kind: "notABackup" },
    { kind: "newerFormat", format: "x" },
    { kind: "damaged" },
    { kind: "badRecord", line: 1, cause: "x" },
  ] as const)
    dataView({ ...data, fault: { way: "in", cause } }, words);
  const differing = BACKUP_TABLES.map((table) => ({
    mine: { table, id: "a", changedAt: null, fingerprint: "" },
    theirs: { table, id: "a", demo: false, changedAt: null, value: {} },
    choice: "keepMine" as const,
    choices: ["keepMine", "takeTheirs", "keepBoth"] as const,
  }));
  const many = Array.from({ length: 5 }, () => differing).flat();
  const nose = differing.map((one) => ({
    ...one,
    mine: { ...one.mine, table: "settings" as const, id: ACTIVE_NOSE_ID },
  }));
  importPlanView({ fresh: [], same: [], differing: nose }, "2026-11-25T18:00:00Z", false, words);
  importPlanView({ fresh: [], same: [], differing: many }, "2026-11-25T18:00:00Z", true, words);
  importPlanView({ fresh: [], same: [], differing: [] }, "2026-11-25T18:00:00Z", false, words);
  for (const step of FIRST_RUN_STEPS) firstRunView(step, true, words);
}
