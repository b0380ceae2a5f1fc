/** Whether fresh samples are worth the user's while. */
export type RefreshAdvice =
  | { readonly kind: "fresh" }
  | { readonly kind: "worthwhile"; readonly why: "drift" | "age"; readonly platesPerGroup: number };

/** A metal-oxide sensor's calibration lasts weeks to months. Solorzano and others, Sensors and Actuators B 352 (2022),
 * 130961: four months later sensitivity had fallen to 85 %. A third of that. */
export const STALE_AFTER_DAYS = 40;
/** Five fresh samples a class brought a drifted nose from 0.58 to 0.96 in the data of Vergara and others (2012). */
export const FRESH_PLATES_PER_GROUP = 5;
const DAY_MS = 86_400_000;

/**
 * Asks for fresh samples where the check jar sees drift, or the nose is old.
 *
 * @param taughtAt - ISO 8601 instant
 * @param now - ISO 8601 instant
 * @param snifferInControl - the check jar's word; undefined if it was not asked
 */
export function refreshAdvice(
  taughtAt: string,
  now: string,
  snifferInControl: boolean | undefined,
): RefreshAdvice {
  if (snifferInControl === false)
    return { kind: "worthwhile", why: "drift", platesPerGroup: FRESH_PLATES_PER_GROUP };
  const ageDays = (Date.parse(now) - Date.parse(taughtAt)) / DAY_MS;
  return ageDays > STALE_AFTER_DAYS
    ? { kind: "worthwhile", why: "age", platesPerGroup: FRESH_PLATES_PER_GROUP }
    : { kind: "fresh" };
}
