import { MEAL_OUTCOMES, type MealOutcome } from "../meals/meal.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { CLAIM_IDS, type OptionView } from "./plateHomeView.js";

/** A meal as a form. */
export interface MealFormView {
  readonly title: string;
  readonly dish: { readonly label: string; readonly value: string };
  readonly place: {
    readonly label: string;
    readonly hint: string;
    readonly value: string;
    readonly suggestions: readonly string[];
  };
  readonly when: { readonly label: string; readonly value: string; readonly fault: string | undefined };
  readonly note: { readonly label: string; readonly value: string };
  readonly claims: { readonly label: string; readonly hint: string; readonly value: string };
  readonly photos: {
    readonly label: string;
    readonly hint: string;
    readonly add: string;
    readonly items: readonly { readonly id: string; readonly label: string; readonly remove: string }[];
    readonly fault: string | undefined;
  };
  readonly outcome: { readonly label: string; readonly options: readonly OptionView[] };
  readonly fault: string | null;
  readonly save: string;
  readonly saving: boolean;
  readonly cancel: string;
}

export interface MealDraft {
  readonly dish: string;
  readonly place: string;
  /** Local day and time as the browser's field has it: "2026-11-25T18:30". */
  readonly when: string;
  readonly note: string;
  /** One claim a line. */
  readonly claims: string;
  readonly photoIds: readonly string[];
  readonly outcome: MealOutcome | null;
}

export interface MealFormState {
  readonly draft: MealDraft;
  readonly isNew: boolean;
  readonly places: readonly string[];
  readonly photoFault: "tooLarge" | "notAnImage" | null;
  readonly status: "editing" | "saving" | "failed";
}

/** The outcome option that leaves it open. */
export const OUTCOME_OPEN = "open";

/** Words of the meal form. */
export function mealFormView(state: MealFormState, words: Words<"common" | "meals">): MealFormView {
  const { form, detail } = words.text.meals;
  const { draft } = state;
  const number = (i: number) => numberText(i + 1, words.formats);
  return {
    title: state.isNew ? form.titleNew : form.titleEdit,
    dish: { label: form.dish, value: draft.dish },
    place: { label: form.place, hint: form.placeHint, value: draft.place, suggestions: state.places },
    when: {
      label: form.when,
      value: draft.when,
      fault: Number.isNaN(Date.parse(draft.when)) ? form.whenFault : undefined,
    },
    note: { label: form.note, value: draft.note },
    claims: { label: form.claims, hint: form.claimsHint, value: draft.claims },
    photos: {
      label: form.photos,
      hint: form.photosHint,
      add: form.addPhoto,
      items: draft.photoIds.map((id, i) => ({
        id,
        label: detail.photo(number(i)),
        remove: form.removePhoto(number(i)),
      })),
      fault: state.photoFault === null ? undefined : form.photoFaults[state.photoFault],
    },
    outcome: {
      label: form.outcome,
      options: [
        { id: OUTCOME_OPEN, label: form.outcomeOpen, chosen: draft.outcome === null },
        ...MEAL_OUTCOMES.map((id) => ({ id, label: detail.outcomes[id], chosen: id === draft.outcome })),
      ],
    },
    fault: state.status === "failed" ? form.storeFault : null,
    save: state.status === "saving" ? form.saving : form.save,
    saving: state.status === "saving",
    cancel: words.text.common.cancel,
  };
}

/** The claims picked on Plate, in words: what a meal keeps. */
export function claimTexts(ids: readonly string[], { text }: Words<"plate">): string[] {
  return CLAIM_IDS.filter((id) => ids.includes(id)).map((id) => text.plate.claimOptions[id]);
}

/** One claim a line, without empty ones. */
export const claimsOf = (draft: Pick<MealDraft, "claims">): string[] =>
  draft.claims
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");
