/** Cautions, questions and groups for the dish that is typed, by the person's diet. The tables load when first needed. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { CautionView } from "../views/cautionsView.js";
import type { PlateForm } from "./plateForm.js";
import type { PreferencesControl } from "./preferencesControl.js";

export interface DietControl {
  readonly hasProfile: ReadonlySignal<boolean>;
  readonly hasAllergy: ReadonlySignal<boolean>;
  readonly groups: ReadonlySignal<readonly string[]>;
  readonly allergyGroups: ReadonlySignal<readonly string[]>;
  readonly suggestions: ReadonlySignal<readonly string[]>;
  readonly cautions: ReadonlySignal<readonly CautionView[]>;
  readonly questions: ReadonlySignal<readonly string[]>;
}

export function createDietControl(preferences: PreferencesControl, _plate: PlateForm): DietControl {
  const profile = computed(() => preferences.preferences.value.profile);
  return {
    hasProfile: computed(() => profile.value.diets.length + profile.value.allergies.length > 0),
    hasAllergy: computed(() => profile.value.allergies.length > 0),
    groups: computed(() => profile.value.avoidedGroups),
    allergyGroups: signal([]),
    suggestions: signal([]),
    cautions: signal([]),
    questions: signal([]),
  };
}
