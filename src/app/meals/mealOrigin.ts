/** What a meal brings along from the check it is saved after. */
import type { PlateFinding } from "../../finding/finding.js";
import type { FindingSnapshot } from "../../meals/findingSnapshot.js";
import type { CautionSnapshot, Meal } from "../../meals/meal.js";
import type { CautionView } from "../../views/cautionsView.js";

export interface MealOrigin {
  readonly sniffId: string;
  readonly finding: FindingSnapshot;
  readonly noseId?: string | undefined;
  readonly cautions: readonly CautionSnapshot[];
  /** A plate of the practice kitchen: marked, so that it can be taken away with everything else that is a demo. */
  readonly practice: boolean;
}

/**
 * Copies a finding and its cautions as they stand on the screen: nothing that is taught or learnt later changes them.
 *
 * @param activeNoseId - the nose in use, for a finding that names none
 */
export function originOf(
  finding: PlateFinding,
  cautions: readonly CautionView[],
  activeNoseId: string | null,
  practice: boolean,
): MealOrigin {
  const named = finding.groups.find(({ basis }) => basis !== null)?.basis?.noseId;
  const noseId = named ?? activeNoseId ?? undefined;
  return {
    sniffId: finding.sniffId,
    finding: structuredClone(finding),
    ...(noseId === undefined ? {} : { noseId }),
    cautions: cautions.map(({ id, text }) => ({ id, text })),
    practice,
  };
}

/** A new meal with what the check found. */
export function mealFrom(meal: Meal, origin: MealOrigin | null): Meal {
  if (origin === null) return meal;
  const { sniffId, finding, noseId, cautions } = origin;
  return { ...meal, sniffId, finding, cautions, ...(noseId === undefined ? {} : { noseId }) };
}
