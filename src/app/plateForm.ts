/** What the person said of the plate before the sniff. */
import { signal, type Signal } from "@preact/signals";

export interface PlateForm {
  readonly dish: Signal<string>;
  readonly claims: Signal<readonly string[]>;
  /** Beliefs by food group, as fractions. */
  readonly beliefs: Signal<Readonly<Record<string, number>>>;
  /** Dish of the practice kitchen; null: the virtual cook chooses. */
  readonly practiceDish: Signal<string | null>;
}

export function createPlateForm(): PlateForm {
  return { dish: signal(""), claims: signal([]), beliefs: signal({}), practiceDish: signal(null) };
}

/** Empties the form for the next plate. */
export function clearPlateForm(form: PlateForm): void {
  form.dish.value = "";
  form.claims.value = [];
  form.beliefs.value = {};
}
