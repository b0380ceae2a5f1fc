/** The form of one meal: new, after a check, or edited. */
import type { ReadonlySignal } from "@preact/signals";
import { MEAL_OUTCOMES, newMeal, type Meal } from "../../meals/meal.js";
import { nowIso, type Ports } from "../ports.js";
import { liveMeal, type FormStart } from "./beginForm.js";
import { createFormPhotos } from "./formPhotos.js";
import { recordId } from "./formRecord.js";
import { createFormState, type OpenForm } from "./formState.js";
import { mealWith } from "./mealDraft.js";
import { mealFrom } from "./mealOrigin.js";
import type { PhotoUrls } from "./photoUrls.js";

export interface MealForm {
  /** null while it is being read; "missing" if the meal to edit is not here. */
  readonly open: ReadonlySignal<OpenForm | "missing" | null>;
  readonly photos: PhotoUrls;
  set(field: "dish" | "place" | "when" | "note" | "claims", value: string): void;
  /** A meal outcome; anything else leaves it open. */
  setOutcome(option: string): void;
  addPhoto(file: Blob): Promise<void>;
  removePhoto(id: string): void;
  /** Keeps the meal, its photos and its sniff in one transaction, and lets the draft go. null if it was not kept. */
  save(): Promise<Meal | null>;
  /** Lets the draft and its photos go. */
  discard(): Promise<void>;
  /** Keeps at once what was typed, as when the person turns to another app. */
  keepRest(): void;
  /** Keeps what was typed and takes the photos' addresses back. */
  close(): void;
}

export function createMealForm(ports: Ports, start: FormStart): MealForm {
  const photos = createFormPhotos(ports);
  const { open, current, change, edit, keep, keepRest, end } = createFormState(ports, start, photos);

  /** Photos are scaled one after the other; a meal is saved with all that were chosen. */
  let adding = Promise.resolve();

  async function save(): Promise<Meal | null> {
    if (current() === null || current()?.status === "saving") return null;
    change({ status: "saving" });
    await adding;
    const form = current();
    if (form === null) return null;
    const meal = mealWith(await mealBefore(form, ports), form.draft, nowIso(ports));
    const kept = meal !== null && (await keepMeal(meal, form));
    if (!kept) change({ status: meal === null ? "editing" : "failed" });
    if (!kept) return null;
    end();
    const before = [...photos.added, ...(form.base?.photoIds ?? [])];
    dropPhotos(
      ports,
      before.filter((id) => !meal.photoIds.includes(id)),
    );
    return meal;
  }

  async function keepMeal(meal: Meal, { subject, origin }: OpenForm): Promise<boolean> {
    const saved = await ports.store.save({
      meals: [meal],
      photos: photos.held().filter(({ id }) => meal.photoIds.includes(id)),
      sniffs: start.sniff === null ? [] : [start.sniff],
      doneDrafts: [recordId(subject)],
      demo: origin?.practice ?? false,
    });
    return saved.ok;
  }

  async function discard(): Promise<void> {
    const form = current();
    end();
    if (form === null) return;
    await ports.store.save({ doneDrafts: [recordId(form.subject)] });
    const own = [...photos.added, ...form.draft.photoIds];
    dropPhotos(
      ports,
      own.filter((id) => form.base?.photoIds.includes(id) !== true),
    );
  }

  async function addPhoto(file: Blob): Promise<void> {
    const added = await photos.add(file);
    change({ photoFault: added.ok ? null : added.error });
    const form = current();
    if (form === null || !added.ok) return;
    edit({ photoIds: [...form.draft.photoIds, added.value] });
    await keep();
  }

  return {
    open,
    photos: photos.urls,
    set: (field, value) => edit({ [field]: value }),
    setOutcome: (option) => edit({ outcome: MEAL_OUTCOMES.find((known) => known === option) ?? null }),
    addPhoto: (file) => {
      adding = adding.then(() => addPhoto(file));
      return adding;
    },
    removePhoto: (id) => {
      photos.remove(id);
      edit({ photoIds: (current()?.draft.photoIds ?? []).filter((other) => other !== id) });
    },
    save,
    discard,
    keepRest,
    close: () => {
      keepRest();
      photos.urls.close();
    },
  };
}

/** Read anew: the truth or the reaction may have been written elsewhere since the form was opened. */
async function mealBefore({ base, origin }: OpenForm, ports: Ports): Promise<Meal> {
  if (base === null) return mealFrom(newMeal(ports.newId(), nowIso(ports)), origin);
  // Deleted in another tab meanwhile: whoever saves it wants it.
  return (await liveMeal(ports, base.id)) ?? base;
}

function dropPhotos({ store, nowMs }: Ports, ids: readonly string[]): void {
  if (ids.length > 0) void store.deletePhotos([...new Set(ids)], nowIso({ nowMs }));
}
