import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type {
  BackupContents,
  BackupRecord,
  BackupTable,
  ExistingRecord,
} from "../../src/meals/backupContents.js";
import { fingerprintOf } from "../../src/meals/fingerprint.js";
import { decide, planImport, recordsToWrite } from "../../src/meals/importPlan.js";
import { anyContents } from "./arbitraries.js";

const early = "2026-11-25T18:30:00.000Z";
const late = "2026-11-26T07:00:00.000Z";

const record = (
  table: BackupTable,
  id: string,
  dish: string,
  changedAt: string | null = null,
): BackupRecord => ({
  table,
  id,
  demo: false,
  changedAt,
  value: { id, dish },
});
const here = (records: readonly BackupRecord[]): ExistingRecord[] =>
  records.map((one) => ({ ...one, fingerprint: fingerprintOf(one) }));
const backup = (...records: BackupRecord[]): BackupContents => ({ writtenAt: late, records });

/** What is here after a plan was carried out. */
function after(before: readonly BackupRecord[], written: readonly BackupRecord[]): BackupRecord[] {
  const all = new Map(before.map((one) => [`${one.table}:${one.id}`, one]));
  written.forEach((one) => all.set(`${one.table}:${one.id}`, one));
  return [...all.values()];
}

describe("planning an import", () => {
  it("brings in what is new and leaves what is the same", () => {
    const known = record("meals", "m1", "plum soup", early);
    const plan = planImport(here([known]), backup(known, record("meals", "m2", "leek dumplings", early)));
    expect(plan.fresh.map(({ id }) => id)).toEqual(["m2"]);
    expect(plan.same).toEqual([{ table: "meals", id: "m1" }]);
    expect(plan.differing).toEqual([]);
  });

  it("does not take a sniff for a meal of the same id", () => {
    const plan = planImport(here([record("meals", "x", "soup")]), backup(record("sniffs", "x", "soup")));
    expect(plan.fresh).toHaveLength(1);
  });

  it.each([
    ["theirs is newer", "meals", early, late, "takeTheirs"],
    ["mine is newer", "meals", late, early, "keepMine"],
    ["neither is newer", "meals", early, early, "keepBoth"],
    ["settings, even if theirs are newer", "settings", early, late, "keepMine"],
    ["raw sweeps", "sniffs", null, null, "keepBoth"],
    ["noses", "noses", null, null, "keepBoth"],
    ["photos", "photos", null, null, "keepMine"],
    ["a label that is newer", "sniffNotes", early, late, "takeTheirs"],
  ] as const)("proposes for a difference, %s", (_what, table, mineAt, theirsAt, choice) => {
    const mine = record(table, "x", "plum soup", mineAt);
    const plan = planImport(here([mine]), backup(record(table, "x", "leek soup", theirsAt)));
    expect(plan.differing).toMatchObject([{ choice, mine: { id: "x" } }]);
    expect(plan.differing[0]?.choices).toContain(choice);
  });

  it("compares instants, not their spelling", () => {
    const mine = record("meals", "x", "plum soup", "2026-11-25T20:00:00+02:00"); // 18:00 UTC
    const plan = planImport(here([mine]), backup(record("meals", "x", "leek soup", "2026-11-25T18:30:00Z")));
    expect(plan.differing[0]?.choice).toBe("takeTheirs");
  });

  it("writes what was chosen, and nothing for mine", () => {
    const mine = record("meals", "x", "plum soup", early);
    const theirs = record("meals", "x", "leek soup", late);
    const plan = planImport(here([mine]), backup(theirs));
    expect(recordsToWrite(plan)).toEqual([theirs]);
    expect(recordsToWrite(decide(plan, "meals", "x", "keepMine"))).toEqual([]);
    const [copy] = recordsToWrite(decide(plan, "meals", "x", "keepBoth"));
    expect(copy?.id).not.toBe("x");
    expect(copy?.value).toEqual({ id: copy?.id, dish: "leek soup" });
  });

  it("offers no way to write over raw sweeps", () => {
    const plan = planImport(here([record("sniffs", "x", "a")]), backup(record("sniffs", "x", "b")));
    expect(() => decide(plan, "sniffs", "x", "takeTheirs")).toThrow(RangeError);
    expect(() => decide(plan, "sniffs", "y", "keepMine")).toThrow(RangeError);
  });

  it("never writes over anything that does not stand in the list of differences, and adds nothing the second time", () => {
    fc.assert(
      fc.property(anyContents, anyContents, (mine, theirs) => {
        const plan = planImport(here(mine.records), theirs);
        const chosen = new Set(plan.differing.map(({ mine: one }) => `${one.table}:${one.id}`));
        const known = new Set(mine.records.map((one) => `${one.table}:${one.id}`));
        for (const one of recordsToWrite(plan)) {
          const key = `${one.table}:${one.id}`;
          expect(known.has(key) && !chosen.has(key)).toBe(false);
        }
        expect(plan.fresh.length + plan.same.length + plan.differing.length).toBe(theirs.records.length);
        const then = after(mine.records, recordsToWrite(plan));
        const again = planImport(here(then), theirs);
        expect(again.fresh).toEqual([]);
        expect(recordsToWrite(again)).toEqual([]);
      }),
    );
  });
});
