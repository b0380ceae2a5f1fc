// When a backup is reminded of. Two weeks and ten records are common practice; the instants are counted by hand.
import { expect, it } from "vitest";
import { recordsToBackUp, REMIND_AFTER_MS, REMIND_AFTER_RECORDS } from "../../src/meals/backupReminder.js";

const BASELINE = { at: "2026-11-01T10:00:00.000Z", records: 5 };
const FROM_MS = Date.UTC(2026, 10, 1, 10);

it.each([
  ["a moment before two weeks are over", FROM_MS + REMIND_AFTER_MS - 1, 100, null],
  ["after two weeks to the millisecond", FROM_MS + REMIND_AFTER_MS, 100, 95],
  ["with one record too few", FROM_MS + REMIND_AFTER_MS, 5 + REMIND_AFTER_RECORDS - 1, null],
  ["with just enough records", FROM_MS + REMIND_AFTER_MS, 5 + REMIND_AFTER_RECORDS, REMIND_AFTER_RECORDS],
  ["when more was deleted than added", FROM_MS + 10 * REMIND_AFTER_MS, 2, null],
  ["when the clock went back behind the last backup", FROM_MS - 1000 * REMIND_AFTER_MS, 100, null],
])("reminds %s or stays silent", (_when, nowMs, records, expected) => {
  expect(recordsToBackUp(BASELINE, records, nowMs)).toBe(expected);
});
