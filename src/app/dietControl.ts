/** Cautions, questions and groups for the dish that is typed, by the person's diet. */
import type * as dietTables from "./dietTables.js";
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { Caution } from "../diet/caution.js";
import type { DietProfile } from "../diet/profile.js";
import type { CautionView } from "../views/cautionsView.js";
import { afterPaint } from "./afterPaint.js";
import type { PlateForm } from "./plateForm.js";
import type { PreferencesControl } from "./preferencesControl.js";
import { untilHere } from "./pieces.js";

type DietTables = typeof dietTables;

/** Suggestions under the dish field that still leave room for the hand. */
const MOST_SUGGESTIONS = 5;

export interface DietControl {
  /** Brings the tables in; nothing is judged or warned of before. */
  load(): Promise<void>;
  readonly ready: ReadonlySignal<boolean>;
  readonly hasProfile: ReadonlySignal<boolean>;
  readonly hasAllergy: ReadonlySignal<boolean>;
  /** Groups that the diet, the allergies and the person's own choice call for. */
  readonly groups: ReadonlySignal<readonly string[]>;
  readonly allergyGroups: ReadonlySignal<readonly string[]>;
  readonly suggestions: ReadonlySignal<readonly string[]>;
  readonly cautions: ReadonlySignal<readonly CautionView[]>;
  readonly questions: ReadonlySignal<readonly string[]>;
  /** What holds whatever the dish; empty until the tables are here, and without a profile. */
  readonly standing: ReadonlySignal<readonly { readonly id: string; readonly text: string }[]>;
}

export function createDietControl(preferences: PreferencesControl, plate: PlateForm): DietControl {
  const tables = signal<DietTables | null>(null);
  const profile = computed(() => preferences.preferences.value.profile);
  const said = afterPaint(computed(() => ({ text: plate.dish.value, claims: plate.claims.value })));
  const cautions = computed<readonly Caution[]>(() =>
    tables.value === null || said.value.text.trim() === ""
      ? []
      : tables.value.cautionsFor({ ...said.value, profile: profile.value }),
  );

  return {
    load: async () => {
      const [loaded] = await Promise.all([untilHere(() => import("./dietTables.js")), preferences.loadAll()]);
      loaded.warmUp();
      tables.value ??= loaded;
    },
    ready: computed(() => tables.value !== null),
    hasProfile: computed(() => isFilled(profile.value)),
    hasAllergy: computed(() => profile.value.allergies.length > 0),
    groups: computed(() => tables.value?.avoidedGroupsOf(profile.value) ?? []),
    allergyGroups: computed(() => tables.value?.allergyGroupsOf(profile.value) ?? []),
    suggestions: computed(() => suggestionsFor(said.value.text, tables.value)),
    cautions: computed(() => {
      const loaded = tables.value;
      if (loaded === null) return [];
      const words = preferences.words.value;
      return loaded.dietCautionViews(cautions.value, profile.value.jurisdiction, words);
    }),
    questions: computed(() => {
      const loaded = tables.value;
      if (loaded === null) return [];
      const language = loaded.tableLanguage(preferences.words.value.formats);
      return loaded.kitchenQuestions(cautions.value).flatMap((id) => {
        const question = loaded.QUESTIONS.find((known) => known.id === id);
        return question === undefined ? [] : [question[language]];
      });
    }),
    standing: computed(() =>
      isFilled(profile.value)
        ? (tables.value?.standingView(profile.value, preferences.words.value) ?? [])
        : [],
    ),
  };
}

/** Is there anything in it that a caution or a finding could be about? */
function isFilled(profile: DietProfile): boolean {
  const { diets, avoidedGroups, allergies, intolerances, ownWords, coeliac } = profile;
  return coeliac || [diets, avoidedGroups, allergies, intolerances, ownWords].some((list) => list.length > 0);
}

/** What is typed already needs no suggestion. */
function suggestionsFor(typed: string, tables: DietTables | null): readonly string[] {
  if (tables === null || typed.trim().length < 2) return [];
  const names = tables.searchDishes(typed, MOST_SUGGESTIONS + 1).map(({ name }) => name);
  return names.filter((name) => name.toLowerCase() !== typed.trim().toLowerCase()).slice(0, MOST_SUGGESTIONS);
}
