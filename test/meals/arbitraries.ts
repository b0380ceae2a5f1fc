/** Random meals and backups for property tests. */
import fc from "fast-check";
import { BACKUP_TABLES, type BackupContents, type BackupRecord } from "../../src/meals/backupContents.js";
import { MEAL_OUTCOMES, newMeal, TRUTH_SOURCES, type Meal } from "../../src/meals/meal.js";

const instant = fc
  .integer({ min: Date.UTC(2025, 0, 1), max: Date.UTC(2028, 0, 1) })
  .map((ms) => new Date(ms).toISOString());
const word = fc.string({ unit: "binary", maxLength: 20 });
const group = fc.constantFrom("meat", "fish", "egg", "dairy");
const groupTruth = fc.constantFrom("present" as const, "absent" as const, "unknown" as const);

/** Any sound meal without a finding. */
export const anyMeal: fc.Arbitrary<Meal> = fc
  .record(
    {
      id: fc.uuid(),
      at: instant,
      dish: word,
      place: word,
      note: word,
      claims: fc.array(word, { maxLength: 3 }),
      photoIds: fc.array(fc.uuid(), { maxLength: 2 }),
      outcome: fc.option(fc.constantFrom(...MEAL_OUTCOMES)),
      truth: fc.option(
        fc.record({
          groups: fc.dictionary(group, groupTruth),
          source: fc.constantFrom(...TRUTH_SOURCES),
          knownAt: instant,
          note: word,
        }),
      ),
      reaction: fc.option(
        fc.record({
          onsetMs: fc.integer({ min: 0, max: 1e8 }),
          symptoms: fc.array(word, { maxLength: 3 }),
          severity: fc.constantFrom(0 as const, 1 as const, 2 as const, 3 as const),
          note: word,
        }),
      ),
      changedAt: instant,
    },
    { requiredKeys: ["id", "at"] },
  )
  .map((part) => ({ ...newMeal(part.id, part.at), ...part }));

/** Keys that name an object's own machinery are left out by the checks, so no record of ours has them. */
const key = fc
  .string({ maxLength: 8 })
  .filter((text) => !["__proto__", "constructor", "prototype"].includes(text));
const plainJson = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 3 },
    fc.constant(null),
    fc.boolean(),
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => (Object.is(x, -0) ? 0 : x)),
    word,
    fc.array(tie("value"), { maxLength: 3 }),
    fc.dictionary(key, tie("value"), { maxKeys: 3, noNullPrototype: true }),
  ),
})).value;

const anyRecord: fc.Arbitrary<BackupRecord> = fc
  .record({
    table: fc.constantFrom(...BACKUP_TABLES),
    // A few ids are common, so that two backups often meet.
    id: fc.oneof(fc.constantFrom("a", "b", "c"), fc.string({ minLength: 1, maxLength: 6, unit: "binary" })),
    demo: fc.boolean(),
    changedAt: fc.option(instant),
    value: fc.dictionary(key, plainJson, { maxKeys: 4, noNullPrototype: true }),
    bytes: fc.uint8Array({ maxLength: 40 }).map((bytes) => new Uint8Array(bytes)),
  })
  .map(({ bytes, ...record }) => (record.table === "photos" ? { ...record, bytes } : record));

/** Any backup, of records that need not be sound meals or sniffs. */
export const anyContents: fc.Arbitrary<BackupContents> = fc.record({
  writtenAt: instant,
  records: fc.uniqueArray(anyRecord, { maxLength: 12, selector: ({ table, id }) => `${table}:${id}` }),
});
