/** One meal on its page, kept up with the store: another tab, or another page, may change it. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Meal } from "../../meals/meal.js";
import type { Ports } from "../ports.js";
import { liveMeal } from "./beginForm.js";
import { sampleLabel } from "./mealEdits.js";

export type MealPage =
  | { readonly kind: "reading" }
  | { readonly kind: "missing" } // deleted, or on another phone
  | { readonly kind: "open"; readonly meal: Meal; readonly sampled: boolean };

export interface OpenMeal {
  readonly page: ReadonlySignal<MealPage>;
  close(): void;
}

export function openMeal(ports: Ports, id: string): OpenMeal {
  const page = signal<MealPage>({ kind: "reading" });
  let round = 0;

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
    if (mine === round) page.value = { kind: "open", meal, sampled: label !== null };
  }

  const unsubscribe = ports.store.subscribe(["meals", "sniffs"], () => void read());
  void read();
  return {
    page,
    close: () => {
      round += 1;
      unsubscribe();
    },
  };
}
