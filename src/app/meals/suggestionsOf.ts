import { computed, type ReadonlySignal } from "@preact/signals";
import { plateSuggestions, type PlateSuggestion, type ShownMisses } from "../../meals/plateSuggestions.js";
import { LEAST_ABSENT } from "../../views/samplesView.js";
import type { AppModel } from "../appModel.js";
import type { MealsList } from "./mealsList.js";
import { mealsListOf } from "./mealsListOf.js";

const known = new WeakMap<AppModel, ReadonlySignal<readonly PlateSuggestion[]>>();

/**
 * Which plates would help the nose most. Demo samples and practice plates teach nothing of real food. Worked out once for
 * all pages: over ten thousand meals it takes longer than a tap may.
 */
export function suggestionsOf(app: AppModel): ReadonlySignal<readonly PlateSuggestion[]> {
  const before = known.get(app);
  if (before !== undefined) return before;
  const list = mealsListOf(app);
  const suggestions = computed(() => suggested(app, list));
  known.set(app, suggestions);
  return suggestions;
}

function suggested(app: AppModel, list: MealsList): readonly PlateSuggestion[] {
  const practice = list.practice.value;
  return plateSuggestions({
    samples: app.samples.samples.value.filter(({ demo }) => !demo),
    meals: list.settled.value.filter(({ sniffId }) => sniffId === undefined || !practice.has(sniffId)),
    groups: app.groups.value,
    shown: shownBy(app),
    acceptedMissRate: app.preferences.preferences.value.acceptedMissRate,
    leastAbsent: LEAST_ABSENT,
  });
}

function shownBy({ noses }: AppModel): ShownMisses[] {
  const active = noses.active.value;
  if (active.kind !== "ready" || active.demo) return [];
  return active.nose.report.groups.flatMap(({ group, sensitivity }) =>
    sensitivity === null
      ? []
      : [{ group, misses: sensitivity.trials - sensitivity.events, trials: sensitivity.trials }],
  );
}
