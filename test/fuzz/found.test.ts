// What the fuzzing found once, so that it is found no more.
import { expect, it } from "vitest";
import { parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import { readSniffFile } from "../../src/sniff/sniffFile.js";
import { everyModel, SNIFF } from "./fileTargets.js";

it("refuses a nose file whose format cannot be made into words", () => {
  expect(parseNose('{"format":{"toString":1,"valueOf":null}}')).toEqual({
    ok: false,
    error: { kind: "otherFormat", format: "none" },
  });
});

it("refuses a sniff nested deeper than it could be written again, and keeps the line after it", () => {
  const deep = JSON.stringify({ ...SNIFF, more: "@" }).replace('"@"', "[".repeat(6000) + "]".repeat(6000));
  const { sniffs, faults } = readSniffFile(`${deep}\n${JSON.stringify(SNIFF)}\n`);
  expect(sniffs).toHaveLength(1);
  expect(faults).toEqual([{ line: 1, field: "", cause: "is nested deeper than 64" }]);
});

it("refuses an instant that ECMAScript cannot place in time, in a sniff and in a nose", () => {
  // ISO 8601 allows an hour alone as the zone; ECMA-262, "Date Time String Format", does not.
  const hourAlone = "2026-11-25T18:30:00+05";
  const { faults } = readSniffFile(JSON.stringify({ ...SNIFF, takenAt: hourAlone }));
  expect(faults[0]).toMatchObject({ line: 1, field: "takenAt" });
  expect(parseNose(serialiseNose({ ...everyModel(), taughtAt: hourAlone }))).toMatchObject({
    error: { kind: "badField", field: "taughtAt" },
  });
});
