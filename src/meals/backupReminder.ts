/** When to say that much is kept in one place only. It is said gently: after a time, and only of many records. */

/** Two weeks and ten records: common practice, and rarely enough to be read. */
export const REMIND_AFTER_MS = 14 * 24 * 3_600_000;
export const REMIND_AFTER_RECORDS = 10;

/** From when on records count as new: a backup, a "later", or the first time that anybody looked. */
export interface BackupBaseline {
  /** ISO 8601 instant. */
  readonly at: string;
  /** Meals and samples that were there then. */
  readonly records: number;
}

/**
 * How many records no backup holds, once it is time to say so; else null.
 *
 * @param records - meals and samples that are here now
 * @param nowMs - milliseconds since 1970; a clock that went back behind the baseline is no time passed
 */
export function recordsToBackUp(baseline: BackupBaseline, records: number, nowMs: number): number | null {
  const fresh = records - baseline.records;
  const isTime = nowMs - Date.parse(baseline.at) >= REMIND_AFTER_MS;
  return isTime && fresh >= REMIND_AFTER_RECORDS ? fresh : null;
}
