import type { Meal } from "../../meals/meal.js";
import type { Sniff } from "../../sniff/sniff.js";
import type { MealDraft } from "../../views/mealFormView.js";
import { nowIso, type Ports } from "../ports.js";
import { recordFor, type FormSubject } from "./formRecord.js";
import { draftOf, emptyDraft } from "./mealDraft.js";
import type { MealOrigin } from "./mealOrigin.js";

/** What a form is opened with. */
export interface FormStart {
  readonly subject: FormSubject;
  /** What the check found; null without one. */
  readonly origin: MealOrigin | null;
  /** The sniff of that check, kept together with the meal. */
  readonly sniff: Sniff | null;
  /** Fields that are filled in from the start. */
  readonly filled: Partial<MealDraft>;
}

/** What a form goes on with, once the store has been asked. */
export interface BegunForm {
  /** A form for a new meal may turn out to go on with an unsaved finding. */
  readonly subject: FormSubject;
  readonly origin: MealOrigin | null;
  /** The meal that is edited; null for a new one. */
  readonly base: Meal | null;
  readonly draft: MealDraft;
  /** Was it waiting in the store? */
  readonly resumed: boolean;
}

/** Looks up the meal to edit and what was typed before; null if that meal is not here (any more). */
export async function beginForm(ports: Ports, start: FormStart): Promise<BegunForm | null> {
  const { store } = ports;
  const base = start.subject.kind === "edit" ? await liveMeal(ports, start.subject.mealId) : null;
  if (base === null && start.subject.kind === "edit") return null;
  const drafts = await store.listDrafts();
  const found = recordFor(start.subject, drafts.ok ? drafts.value.items : []);
  // A draft of a meal that was changed since would take the newer words back.
  if (found !== null && found.baseChangedAt === (base?.changedAt ?? null)) {
    const { subject, draft } = found;
    return { subject, draft, base, origin: start.origin ?? found.origin, resumed: true };
  }
  const draft = base === null ? { ...emptyDraft(nowIso(ports)), ...start.filled } : draftOf(base);
  return { subject: start.subject, draft, base, origin: start.origin, resumed: false };
}

/** A meal that is here and not deleted. */
export async function liveMeal({ store }: Pick<Ports, "store">, id: string): Promise<Meal | null> {
  const meal = await store.getMeal(id);
  return meal.ok && meal.value.deletedAt === undefined ? meal.value : null;
}
