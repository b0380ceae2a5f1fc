/** An unsaved form as it waits in the store, and its check on the way back. */
import * as v from "valibot";
import { findingSnapshotSchema } from "../../meals/findingSnapshot.js";
import { MEAL_OUTCOMES } from "../../meals/meal.js";
import type { Draft } from "../../store/storeTypes.js";
import type { MealDraft } from "../../views/mealFormView.js";
import type { MealOrigin } from "./mealOrigin.js";

const KIND = "meal";
const ID_PREFIX = "meal-form/";

/** What a form is for. */
export type FormSubject =
  | { readonly kind: "new" } // logged by hand
  | { readonly kind: "check"; readonly sniffId: string } // the finding of a check
  | { readonly kind: "edit"; readonly mealId: string };

export interface FormRecord {
  readonly subject: FormSubject;
  readonly draft: MealDraft;
  readonly origin: MealOrigin | null;
  /** `changedAt` of the meal when its form was opened: if it was changed since, this draft is out of date. */
  readonly baseChangedAt: string | null;
}

const text = v.string();
const schema = v.object({
  subject: v.variant("kind", [
    v.object({ kind: v.literal("new") }),
    v.object({ kind: v.literal("check"), sniffId: text }),
    v.object({ kind: v.literal("edit"), mealId: text }),
  ]),
  draft: v.object({
    dish: text,
    place: text,
    when: text,
    note: text,
    claims: text,
    photoIds: v.array(text),
    outcome: v.nullable(v.picklist(MEAL_OUTCOMES)),
  }),
  origin: v.nullable(
    v.object({
      sniffId: text,
      finding: findingSnapshotSchema,
      noseId: v.optional(text),
      cautions: v.array(v.object({ id: text, text })),
      practice: v.boolean(),
    }),
  ),
  baseChangedAt: v.nullable(text),
});

/** One draft for each subject: a form that is opened again goes on where it was. */
export function recordId(subject: FormSubject): string {
  if (subject.kind === "new") return `${ID_PREFIX}new`;
  return `${ID_PREFIX}${subject.kind}/${subject.kind === "check" ? subject.sniffId : subject.mealId}`;
}

export const draftRecord = (record: FormRecord, changedAt: string): Draft => ({
  id: recordId(record.subject),
  kind: KIND,
  changedAt,
  value: record,
});

/**
 * The form to go on with, out of the drafts that wait, newest first.
 *
 * @param subject - "new" goes on with the finding of a check too: after a reload that is where it is found again
 */
export function recordFor(subject: FormSubject, drafts: readonly Draft[]): FormRecord | null {
  for (const draft of drafts) {
    if (draft.kind !== KIND) continue;
    const parsed = v.safeParse(schema, draft.value);
    if (!parsed.success) continue;
    const record: FormRecord = parsed.output;
    const isIt =
      subject.kind === "new"
        ? record.subject.kind !== "edit"
        : recordId(record.subject) === recordId(subject);
    if (isIt) return record;
  }
  return null;
}
