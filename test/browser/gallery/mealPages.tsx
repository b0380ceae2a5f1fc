import { BackupNote } from "../../../src/screens/parts/BackupNote.js";
import { backupNoteView } from "../../../src/views/backupNoteView.js";
import { reviewMeals } from "../../../src/meals/review.js";
import type { Meal } from "../../../src/meals/meal.js";
import { FormActions } from "../../../src/screens/parts/FormActions.js";
import { MealDetailActions, MealDetailScreen } from "../../../src/screens/MealDetailScreen.js";
import { MealFormScreen } from "../../../src/screens/MealFormScreen.js";
import { MealDays } from "../../../src/screens/MealDays.js";
import { MealsListActions, MealsListScreen } from "../../../src/screens/MealsListScreen.js";
import { ReactionFormScreen } from "../../../src/screens/ReactionFormScreen.js";
import { ReviewPeriod } from "../../../src/screens/ReviewPeriod.js";
import { ReviewScreen } from "../../../src/screens/ReviewScreen.js";
import { TruthFormScreen } from "../../../src/screens/TruthFormScreen.js";
import { mealDaysView, type MealDaysState } from "../../../src/views/mealDaysView.js";
import { mealDetailView, type SampleState } from "../../../src/views/mealDetailView.js";
import { mealFormView, type MealFormState } from "../../../src/views/mealFormView.js";
import { mealsListView, type MealsListState } from "../../../src/views/mealsListView.js";
import { reactionFormView, type ReactionDraft } from "../../../src/views/reactionFormView.js";
import { reviewPeriodView, type ReviewPeriodState } from "../../../src/views/reviewPeriodView.js";
import { reviewView } from "../../../src/views/reviewView.js";
import { truthFormView } from "../../../src/views/truthFormView.js";
import { BARE_MEAL, EVERY_SUGGESTION, FULL_MEAL, MEALS } from "./fixtures/meals.js";
import { NOW_MS } from "./fixtures/words.js";
import { noCalls } from "./noCalls.js";
import type { Page } from "./page.js";

const hrefOf = (id: string) => `#/meals/${id}`;
/** A picture of one colour: real photos come from the store. */
const photoUrlOf = () =>
  "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 4 3'%3E%3Crect width='4' height='3' fill='%23987'/%3E%3C/svg%3E";
const nothing = () => undefined;

const list =
  (matching: readonly Meal[], state: Partial<MealsListState> = {}, rows: Partial<MealDaysState> = {}): Page =>
  (words) => {
    const view = mealsListView(
      {
        matching: matching.length,
        total: MEALS.length,
        filter: {},
        groups: ["meat", "fish"],
        places: ["Canal kitchen"],
        days: { from: "", upto: "" },
        daysFault: null,
        setAside: 0,
        ...state,
      },
      words,
    );
    const days = mealDaysView({ matching, shown: 50, practice: new Set(), nowMs: NOW_MS, ...rows }, words);
    return {
      place: "meals",
      body: (
        <MealsListScreen view={view} calls={noCalls()}>
          <MealDays view={days} onMore={nothing} hrefOf={hrefOf} photoUrlOf={photoUrlOf} />
        </MealsListScreen>
      ),
      actions: <MealsListActions label={view.add} onAdd={nothing} />,
    };
  };

const detail =
  (meal: Meal, sample: SampleState): Page =>
  (words) => {
    const view = mealDetailView(
      {
        meal,
        allergyGroups: [],
        sample,
        nowMs: NOW_MS,
        practice: sample === "none",
        suggestions: EVERY_SUGGESTION,
      },
      words,
    );
    return {
      place: "meals",
      body: <MealDetailScreen view={view} calls={noCalls()} photoUrlOf={photoUrlOf} hrefOf={hrefOf} />,
      actions: <MealDetailActions view={view} calls={noCalls()} />,
    };
  };

const FORM: MealFormState = {
  draft: {
    dish: "Clear noodle soup",
    place: "",
    when: "2026-11-25T19:30",
    note: "",
    claims: "menu says vegetarian",
    photoIds: ["p1"],
    outcome: null,
  },
  isNew: true,
  places: ["Canal kitchen", "Night market, stall 4"],
  photoFault: null,
  status: "editing",
};

const form =
  (state: Partial<MealFormState>): Page =>
  (words) => {
    const view = mealFormView({ ...FORM, ...state }, words);
    return {
      place: null,
      body: <MealFormScreen view={view} calls={noCalls()} photoUrlOf={photoUrlOf} />,
      actions: (
        <FormActions
          save={view.save}
          cancel={view.cancel}
          blocked={view.saving}
          onSave={nothing}
          onCancel={nothing}
        />
      ),
    };
  };

const truth: Page = (words) => {
  const draft = { groups: { meat: "present" as const }, source: "kitchen" as const, note: "" };
  const view = truthFormView(draft, ["meat", "fish", "shellfish"], words);
  return {
    place: null,
    body: <TruthFormScreen view={view} calls={noCalls()} />,
    actions: <FormActions save={view.save} cancel={view.cancel} onSave={nothing} onCancel={nothing} />,
  };
};

const REACTION: ReactionDraft = { severity: 0, onset: "unknown", symptoms: [], own: "", note: "" };
const reaction =
  (draft: Partial<ReactionDraft>): Page =>
  (words) => {
    const view = reactionFormView({ ...REACTION, ...draft }, words);
    return {
      place: null,
      body: <ReactionFormScreen view={view} calls={noCalls()} />,
      actions: <FormActions save={view.save} cancel={view.cancel} onSave={nothing} onCancel={nothing} />,
    };
  };

/** Enough eaten meals for a hint: the rice paper goes before most reactions. */
const MANY: readonly Meal[] = Array.from({ length: 40 }, (_, i): Meal => {
  const withFood = i % 4 === 0;
  return {
    ...FULL_MEAL,
    id: `many-${i}`,
    dish: withFood ? "Prawn rice paper" : "Clear noodle soup",
    outcome: "eaten",
    truth: { ...FULL_MEAL.truth!, groups: { meat: i % 7 === 0 ? "absent" : "present" } },
    reaction: withFood && i % 8 !== 4 ? { symptoms: ["hives"], severity: 1, note: "" } : null,
  };
});

const PERIOD: ReviewPeriodState = {
  ready: [
    { id: "a", months: 1, days: "25 Oct – 25 Nov 2026" },
    { id: "b", months: 3, days: "25 Aug – 25 Nov 2026" },
  ],
  chosen: "any",
  own: null,
  fault: null,
};

const review =
  (meals: readonly Meal[], period: Partial<ReviewPeriodState> = {}): Page =>
  (words) => {
    const choice = reviewPeriodView({ ...PERIOD, ...period }, words);
    const view = reviewView(reviewMeals(meals), words, period.own !== undefined);
    return {
      place: "meals",
      body: (
        <ReviewScreen view={view} calls={noCalls()} hrefOf={hrefOf}>
          <ReviewPeriod view={choice} calls={noCalls()} />
        </ReviewScreen>
      ),
    };
  };

/** The list of a person who has not saved a backup for long. */
const withReminder: Page = (words) => {
  const shown = list(MEALS)(words);
  const note = (
    <BackupNote view={backupNoteView(23, words)} onOpen={() => undefined} onLater={() => undefined} />
  );
  return {
    ...shown,
    body: (
      <div class="stack">
        {note}
        {shown.body}
      </div>
    ),
  };
};

export const MEAL_PAGES: Readonly<Record<string, Page>> = {
  "meals-backup-note": withReminder,
  "meals-empty": list([], { total: 0 }),
  "meals-list": list(MEALS),
  "meals-filtered": list(MEALS.slice(1, 2), { filter: { text: "rice", verdict: "not smelled" } }),
  "meals-days": list(
    MEALS.slice(0, 2),
    {
      filter: { group: "meat", verdict: "not smelled", place: "Canal kitchen" },
      days: { from: "2026-11-01", upto: "2026-10-01" },
      daysFault: "order",
      setAside: 1,
    },
    { practice: new Set(["sniff-1"]) },
  ),
  "meals-no-match": list([], { filter: { text: "nothing like it" } }),
  "meals-more": list(MEALS, {}, { shown: 2 }),
  "meal-full": detail(FULL_MEAL, "none"),
  "meal-bare": detail(BARE_MEAL, "none"),
  "meal-form-new": form({}),
  "meal-form-faults": form({
    isNew: false,
    draft: { ...FORM.draft, when: "" },
    photoFault: "notAnImage",
    status: "failed",
  }),
  "meal-truth": truth,
  "meal-reaction": reaction({ severity: 1, symptoms: ["hives"] }),
  "meal-reaction-urgent": reaction({ severity: 3, symptoms: ["breathing", "swelling"] }),
  "review-empty": review([]),
  "review-no-days": review([], { own: { from: "2026-11-25", upto: "2026-11-01" }, fault: "order" }),
  "review-some": review([...MEALS, ...MANY]),
};
