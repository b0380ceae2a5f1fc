/** A form about one meal, such as its truth or the reaction to it. What is typed waits in the store until it is saved. */
import { signal, type ReadonlySignal } from "@preact/signals";
import * as v from "valibot";
import type { Result } from "../../kernel/result.js";
import type { Meal } from "../../meals/meal.js";
import { TRUTH_SOURCES } from "../../meals/meal.js";
import type { StoreError } from "../../store/storeError.js";
import { ONSETS, type OnsetId, type ReactionDraft } from "../../views/reactionFormView.js";
import type { TruthDraft } from "../../views/truthFormView.js";
import { nowIso, type Ports } from "../ports.js";
import { liveMeal } from "./beginForm.js";

const KIND = "meal";
const REST_MS = 300;

/** One kind of form: its name in the draft's id, its shape, and how it begins. */
export interface SmallFormKind<T> {
  readonly name: "truth" | "reaction";
  readonly schema: v.GenericSchema<unknown, T>;
  readonly draftOf: (meal: Meal) => T;
}

export const truthSchema: v.GenericSchema<unknown, TruthDraft> = v.object({
  groups: v.record(v.string(), v.picklist(["present", "absent", "unknown"])),
  source: v.picklist(TRUTH_SOURCES),
  note: v.string(),
});

export const reactionSchema: v.GenericSchema<unknown, ReactionDraft> = v.object({
  severity: v.picklist([0, 1, 2, 3]),
  onset: v.picklist(Object.keys(ONSETS) as OnsetId[]),
  symptoms: v.array(v.string()),
  own: v.string(),
  note: v.string(),
});

export interface SmallForm<T> {
  /** null while it is being read; "missing" if the meal is not here. */
  readonly open: ReadonlySignal<{ readonly meal: Meal; readonly draft: T } | "missing" | null>;
  edit(change: (draft: T) => T): void;
  /** Ends the form if `write` has kept it; `write` is told which draft is done. */
  save(
    write: (meal: Meal, draft: T, doneDrafts: readonly string[]) => Promise<Result<Meal, StoreError>>,
  ): Promise<Result<Meal, StoreError> | null>;
  discard(): Promise<void>;
  /** Keeps at once what was typed, as when the person turns to another app. */
  keepRest(): void;
  close(): void;
}

export function createSmallForm<T>(ports: Ports, mealId: string, kind: SmallFormKind<T>): SmallForm<T> {
  const { store } = ports;
  const id = `meal-form/${kind.name}/${mealId}`;
  const open = signal<{ readonly meal: Meal; readonly draft: T } | "missing" | null>(null);
  let resting: ReturnType<typeof setTimeout> | undefined;
  let busy = false;
  let ended = false;

  async function begin(): Promise<void> {
    const meal = await liveMeal(ports, mealId);
    const drafts = await store.listDrafts();
    const waiting = drafts.ok ? drafts.value.items.find((draft) => draft.id === id) : undefined;
    const kept = v.safeParse(kind.schema, waiting?.value);
    open.value = meal === null ? "missing" : { meal, draft: kept.success ? kept.output : kind.draftOf(meal) };
  }

  function keep(): void {
    resting = undefined;
    if (ended || open.value === null || open.value === "missing") return;
    const draft = { id, kind: KIND, changedAt: nowIso(ports), value: open.value.draft };
    void store.save({ drafts: [draft] });
  }

  function keepRest(): void {
    clearTimeout(resting);
    if (resting !== undefined) keep();
  }

  void begin();
  return {
    open,
    edit: (change) => {
      if (open.value === null || open.value === "missing") return;
      open.value = { ...open.value, draft: change(open.value.draft) };
      clearTimeout(resting);
      resting = setTimeout(keep, REST_MS);
    },
    save: async (write) => {
      if (busy || open.value === null || open.value === "missing") return null;
      busy = true;
      clearTimeout(resting);
      const saved = await write(open.value.meal, open.value.draft, [id]);
      busy = false;
      ended = saved.ok;
      return saved;
    },
    discard: async () => {
      ended = true;
      clearTimeout(resting);
      await store.save({ doneDrafts: [id] });
    },
    keepRest,
    close: keepRest,
  };
}
