/** The check that every meal passes on its way in from a file or back from the store. */
import * as v from "valibot";
import { findingSnapshotSchema } from "./findingSnapshot.js";
import { MEAL_OUTCOMES, TRUTH_SOURCES, type Meal } from "./meal.js";
import { instant, parseWith, type Parse } from "./parseWith.js";

export type { RecordFault } from "./parseWith.js";

/** Long enough for a pasted menu; a record beyond it is damaged or made to harm. */
const MAX_TEXT = 20_000;
const MAX_ITEMS = 500;

const text = v.pipe(v.string(), v.maxLength(MAX_TEXT, `is longer than ${MAX_TEXT} characters`));
const id = v.pipe(
  v.string(),
  v.nonEmpty("must not be empty"),
  v.maxLength(500, "is longer than 500 characters"),
);
const few = <S extends v.GenericSchema>(item: S) =>
  v.pipe(v.array(item), v.maxLength(MAX_ITEMS, `has more than ${MAX_ITEMS} entries`));

const mealSchema = v.looseObject({
  format: v.literal("nidor-meal/1", 'must be "nidor-meal/1"'),
  id,
  at: instant,
  dish: text,
  place: text,
  note: text,
  claims: few(text),
  photoIds: few(id),
  sniffId: v.optional(id),
  finding: v.optional(findingSnapshotSchema),
  noseId: v.optional(id),
  outcome: v.nullable(v.picklist(MEAL_OUTCOMES)),
  truth: v.nullable(
    v.looseObject({
      groups: v.record(id, v.picklist(["present", "absent", "unknown"])),
      source: v.picklist(TRUTH_SOURCES),
      knownAt: instant,
      note: text,
    }),
  ),
  reaction: v.nullable(
    v.looseObject({
      onsetMs: v.optional(
        v.pipe(v.number(), v.finite("must be finite"), v.minValue(0, "must not be negative")),
      ),
      symptoms: few(text),
      severity: v.picklist([0, 1, 2, 3], "must be 0, 1, 2 or 3"),
      note: text,
    }),
  ),
  cautions: few(v.looseObject({ id, text })),
  createdAt: instant,
  changedAt: instant,
  deletedAt: v.optional(instant),
});

/** Checks a value that claims to be a meal. Unknown keys are kept; the first fault found is returned. */
export const parseMeal: Parse<Meal> = parseWith(mealSchema);
