/** One meal on its page, kept up with the store: another tab, or another page, may change it. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { err, type Result } from "../../kernel/result.js";
import type { Meal } from "../../meals/meal.js";
import type { StoreError } from "../../store/storeError.js";
import type { SampleState } from "../../views/mealDetailView.js";
import type { Ports } from "../ports.js";
import { liveMeal } from "./beginForm.js";
import { keepAsSample, sampleLabel } from "./mealEdits.js";

export type MealPage =
  | { readonly kind: "reading" }
  | { readonly kind: "missing" } // deleted, or on another phone
  | { readonly kind: "open"; readonly meal: Meal; readonly sample: SampleState };

export interface OpenMeal {
  readonly page: ReadonlySignal<MealPage>;
  /** Keeps the meal's sniff as a sample. */
  keepSample(): Promise<Result<void, StoreError>>;
  close(): void;
}

export function openMeal(ports: Ports, id: string): OpenMeal {
  const page = signal<MealPage>({ kind: "reading" });
  let round = 0;
  let isKeeping = false;

  async function read(): Promise<void> {
    round += 1;
    const mine = round;
    const meal = await liveMeal(ports, id);
    if (mine !== round) return;
    if (meal === null) {
      page.value = { kind: "missing" };
      return;
    }
    const before = page.value;
    // Opened only with all that stands on it, so that nothing comes in between and moves the rest.
    if (before.kind === "open") page.value = { ...before, meal };
    const label = meal.sniffId === undefined ? null : await sampleLabel(ports.store, meal.sniffId);
    const without = isKeeping ? "keeping" : "none";
    if (mine === round) page.value = { kind: "open", meal, sample: label === null ? without : "kept" };
  }

  const unsubscribe = ports.store.subscribe(["meals", "sniffs"], () => void read());
  void read();
  return {
    page,
    async keepSample() {
      const before = page.value;
      if (before.kind !== "open") return err({ kind: "unknownId", table: "meals", id });
      isKeeping = true;
      page.value = { ...before, sample: "keeping" };
      const kept = await keepAsSample(ports, before.meal);
      isKeeping = false;
      await read();
      return kept;
    },
    close: () => {
      round += 1;
      unsubscribe();
    },
  };
}
