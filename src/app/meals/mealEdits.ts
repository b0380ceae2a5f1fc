/** What is done to one meal outside its form: deleted, brought back, its truth and reaction told, its sniff a sample. */
import { err, ok, type Result } from "../../kernel/result.js";
import type { Meal, MealReaction, MealTruth } from "../../meals/meal.js";
import { isTruthKnown } from "../../meals/mealSearch.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import type { PageCursor, SampleLabel } from "../../store/storeTypes.js";
import { nowIso, type Ports } from "../ports.js";

type StorePorts = Pick<Ports, "store" | "nowMs">;

/** What the sniff of a meal is a sample of; null if it is none. */
export async function sampleLabel(store: Store, sniffId: string): Promise<SampleLabel | null> {
  let after: PageCursor | undefined;
  for (;;) {
    const page = await store.listSniffs({
      samplesOnly: true,
      limit: 250,
      ...(after === undefined ? {} : { after }),
    });
    if (!page.ok) return null;
    const found = page.value.items.find((note) => note.sniffId === sniffId);
    if (found !== undefined) return found.label;
    if (page.value.next === null) return null;
    after = page.value.next;
  }
}

/**
 * Writes what turned out to be on the plate. A sample that was taken from this meal follows in the same transaction,
 * so that no nose is taught what has been corrected since.
 *
 * @param doneDrafts - ids of drafts that end with it
 */
export async function saveTruth(
  { store, nowMs }: StorePorts,
  id: string,
  truth: MealTruth | null,
  doneDrafts: readonly string[] = [],
): Promise<Result<Meal, StoreError>> {
  const changedAt = nowIso({ nowMs });
  const read = await store.getMeal(id);
  if (!read.ok) return read;
  const meal: Meal = { ...read.value, truth, changedAt };
  const label = meal.sniffId === undefined ? null : await sampleLabel(store, meal.sniffId);
  const follows = label?.mealId === id && meal.sniffId !== undefined ? meal.sniffId : null;
  const labels =
    follows === null || label === null || truth === null || !isTruthKnown(meal)
      ? {}
      : { [follows]: { ...label, groups: truth.groups, keptAt: changedAt } };
  const saved = await store.save({ meals: [meal], labels, doneDrafts });
  if (!saved.ok) return saved;
  // Nothing is known of the plate any more: its sniff can teach nothing.
  if (follows !== null && !isTruthKnown(meal)) {
    const taken = await store.labelSniff(follows, null, changedAt);
    if (!taken.ok) return taken;
  }
  return ok(meal);
}

/** Writes how the person felt afterwards. */
export async function saveReaction(
  { store, nowMs }: StorePorts,
  id: string,
  reactionOf: (before: MealReaction | null) => MealReaction,
  doneDrafts: readonly string[] = [],
): Promise<Result<Meal, StoreError>> {
  const read = await store.getMeal(id);
  if (!read.ok) return read;
  const meal: Meal = {
    ...read.value,
    reaction: reactionOf(read.value.reaction),
    changedAt: nowIso({ nowMs }),
  };
  const saved = await store.save({ meals: [meal], doneDrafts });
  return saved.ok ? ok(meal) : saved;
}

/** Keeps the sniff of a confirmed meal as a sample, with the truth of the meal for its groups. */
export async function keepAsSample(
  { store, nowMs }: StorePorts,
  meal: Meal,
): Promise<Result<void, StoreError>> {
  if (meal.sniffId === undefined || meal.truth === null)
    return err({ kind: "unknownId", table: "sniffs", id: meal.sniffId ?? "" });
  const sniff = await store.getSniff(meal.sniffId);
  if (!sniff.ok) return sniff;
  const { plate, occasion, dish } = sniff.value;
  const keptAt = nowIso({ nowMs });
  const groups = { ...sniff.value.groups, ...meal.truth.groups };
  const label = {
    groups,
    plate,
    occasion,
    dish: meal.dish === "" ? dish : meal.dish,
    keptAt,
    mealId: meal.id,
  };
  return store.labelSniff(meal.sniffId, label, keptAt);
}
