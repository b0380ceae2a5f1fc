/** The review of a period: counted in the background, and again when a meal changes. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Meal } from "../../meals/meal.js";
import { reviewMeals, type Review } from "../../meals/review.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import type { Period } from "./period.js";
import { reviewedMeals } from "./reviewedMeals.js";
import { untilHere } from "../pieces.js";

export type Reviewing =
  | { readonly kind: "counting" }
  | { readonly kind: "counted"; readonly review: Review; readonly meals: readonly Meal[] }
  | { readonly kind: "failed"; readonly error: StoreError };

export interface ReviewControl {
  readonly reviewing: ReadonlySignal<Reviewing>;
  retry(): void;
  close(): void;
}

export function createReviewControl(store: Store, period: Period): ReviewControl {
  const reviewing = signal<Reviewing>({ kind: "counting" });
  let round = 0;

  async function count(): Promise<void> {
    round += 1;
    const mine = round;
    const [meals, { claimReader }] = await Promise.all([
      reviewedMeals(store, period),
      untilHere(() => import("./claimDenies.js")),
    ]);
    if (mine !== round) return;
    reviewing.value = meals.ok
      ? {
          kind: "counted",
          meals: meals.value,
          review: reviewMeals(meals.value, { claimDenies: claimReader() }),
        }
      : { kind: "failed", error: meals.error };
  }

  const unsubscribe = store.subscribe(["meals"], () => void count());
  void count();
  return {
    reviewing,
    retry: () => void count(),
    close: () => {
      round += 1;
      unsubscribe();
    },
  };
}
