/** Records that come back from the store: sound ones as they were, others refused with field and cause. */
import assert from "node:assert/strict";
import { readPreferences } from "../../src/flows/readPreferences.js";
import { deeperThan } from "../../src/kernel/jsonDepth.js";
import type { Result } from "../../src/kernel/result.js";
import { MAX_BACKUP_DEPTH } from "../../src/meals/backup.js";
import { parseMeal } from "../../src/meals/parseMeal.js";
import type { Meal } from "../../src/meals/meal.js";
import {
  parseCheckJar,
  parseDraft,
  parseNoseEvent,
  parsePhotoNote,
  parseSniffer,
  parseSniffNote,
} from "../../src/store/records.js";
import { parseSettings } from "../../src/store/settings.js";
import { jsonText, mutateValue } from "./mutate.js";
import type { FuzzTarget } from "./runTarget.js";
import { assertSame } from "./sameJson.js";

const AT = "2026-11-25T18:30:00.000Z";

const MEAL: Meal = {
  format: "nidor-meal/1",
  id: "meal-1",
  at: AT,
  dish: "clear broth with lotus filling",
  place: "stall 4",
  note: "a little cloudy",
  claims: ["menu says vegetarian"],
  photoIds: ["photo-1"],
  sniffId: "sniff-1",
  finding: {
    format: "nidor-finding/1",
    sniffId: "sniff-1",
    headspaceMs: 60_000,
    acceptedMissRate: 0.1,
    groups: [
      {
        group: "fish",
        verdict: "uncertain",
        probability: 0.4,
        interval: { low: 0.2, high: 0.7 },
        belief: { before: 0.5, likelihoodRatio: 0.7, after: 0.41 },
        set: ["present", "absent"],
        reasons: [{ kind: "weakSignal", ratio: 2.1 }],
        basis: {
          noseId: "nose-1",
          noseName: "Night market",
          taughtAt: AT,
          platesTaught: 60,
          heldOutPresent: 30,
          heldOutAbsent: 30,
          misses: 1,
          missRateUpper: 0.15,
          falseAlarms: 2,
        },
      },
    ],
  },
  noseId: "nose-1",
  outcome: "partlyEaten",
  truth: { groups: { fish: "present" }, source: "kitchen", knownAt: AT, note: "dried fish in the stock" },
  reaction: { onsetMs: 3_600_000, symptoms: ["itch"], severity: 1, note: "" },
  cautions: [{ id: "fish-stock", text: "Broth is often made with fish." }],
  createdAt: AT,
  changedAt: AT,
};

const PROFILE = {
  diets: ["eatsFishNoMeat"],
  avoidedGroups: ["fish", "shellfish"],
  allergies: [
    { allergen: "crustaceans", severity: "serious", note: "carries an injector" },
    { allergen: "egg", severity: "mild", note: "" },
  ],
  intolerances: ["lactose"],
  coeliac: true,
  ownWords: ["lotus"],
  jurisdiction: "EU",
};

const SETTINGS = {
  diet: PROFILE,
  acceptedMissRate: 0.05,
  language: "de",
  theme: "dark",
  snifferId: "virtual",
  jurisdiction: "EU",
  changedAt: AT,
  shownFirstRun: true,
};

/** What is taken is kept to the last key; what is refused is refused with words. */
function record(
  name: string,
  sound: unknown,
  parse: (value: unknown) => Result<unknown, { readonly field: string; readonly cause: string }>,
): FuzzTarget {
  return {
    name,
    run: (random) => {
      const asIs = random() < 0.05;
      // Through JSON, as a backup brings it: undefined and -0 have no place there.
      const text = jsonText(asIs ? sound : mutateValue(random, sound));
      const value = JSON.parse(text) as unknown;
      const parsed = parse(value);
      // A backup refuses such depth before any record is looked at; here it must only not crash.
      if (deeperThan(text, MAX_BACKUP_DEPTH)) return false;
      if (asIs) assert.ok(parsed.ok, "a sound record was refused");
      if (parsed.ok) assertSame(parsed.value, value, "the record is not what was kept");
      else assert.ok(parsed.error.cause.length > 0, "refused without a word");
      return parsed.ok;
    },
  };
}

/** An allergy that was kept is read, or its loss is told. */
const preferences: FuzzTarget = {
  name: "preferences",
  run: (random) => {
    const settings = { ...SETTINGS, diet: JSON.parse(jsonText(mutateValue(random, PROFILE))) as unknown };
    const { preferences: read, profileLost } = readPreferences(settings);
    const kept = namesOf(settings.diet);
    if (!profileLost) {
      const found = read.profile.allergies.map(({ allergen }) => allergen);
      assert.deepEqual(found, kept, "an allergy was lost without a word");
    }
    return !profileLost;
  },
};

function namesOf(diet: unknown): unknown[] {
  const allergies = (diet as { allergies?: unknown } | null)?.allergies;
  return Array.isArray(allergies)
    ? allergies.map((allergy) => (allergy as { allergen?: unknown } | null)?.allergen)
    : [];
}

export const recordTargets: readonly FuzzTarget[] = [
  record("meal", MEAL, parseMeal),
  record("settings", SETTINGS, parseSettings),
  preferences,
  record(
    "sniff note",
    {
      sniffId: "sniff-1",
      takenAt: AT,
      dish: "broth",
      snifferId: "sniffer-a",
      label: {
        groups: { meat: "absent" },
        plate: "bowl 3",
        occasion: "evening-2",
        dish: "broth",
        keptAt: AT,
      },
      changedAt: AT,
    },
    parseSniffNote,
  ),
  record(
    "photo note",
    { id: "photo-1", mime: "image/jpeg", sizeBytes: 3000, widthPx: 20, heightPx: 30, addedAt: AT },
    parsePhotoNote,
  ),
  record(
    "sniffer",
    {
      id: "sniffer-a",
      name: "Table sniffer",
      channels: [{ sensor: 0, heaterC: 200, dwellMs: null }],
      firstSeenAt: AT,
      lastSeenAt: AT,
      note: "",
    },
    parseSniffer,
  ),
  record(
    "check jar reading",
    { id: "jar-1", at: AT, snifferId: "sniffer-a", sniffId: "sniff-1", score: 0.3 },
    parseCheckJar,
  ),
  record("draft", { id: "check", kind: "check", changedAt: AT, value: { sweeps: [1, 2] } }, parseDraft),
  record("nose event", { id: "event-1", noseId: "nose-1", decision: "accepted", at: AT }, parseNoseEvent),
];
