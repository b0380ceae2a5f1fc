import { existsSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Sniff } from "../../src/sniff/sniff.js";
import { headspacePrefix } from "../../src/sniff/sniff.js";
import { readSniffFile, writeSniffFile } from "../../src/sniff/sniffFile.js";

/** The example of the format's description, with its gaps filled in. */
const example = {
  format: "nidor-sniff/1",
  id: "s1",
  takenAt: "2026-11-25T18:30:00Z",
  sniffer: { id: "n1", channels: [{ sensor: 0, heaterC: 200, dwellMs: 1000 }] },
  plate: "p1",
  occasion: "o1",
  dish: "clear broth",
  groups: { meat: "present", fish: "absent" },
  cleanAir: { atMs: [0, 10000], ohm: [[50000], [50100]] },
  headspace: { atMs: [0, 10000], ohm: [[30000], [25000]] },
  air: {
    cleanAir: { temperatureC: 22.1, humidityPct: 41.0, pressurePa: 101300 },
    headspace: { temperatureC: 24.0, humidityPct: 55.0, pressurePa: 101300 },
  },
};
const lineOf = (value: unknown) => JSON.stringify(value);
const faultOf = (change: object) => readSniffFile(lineOf({ ...example, ...change })).faults[0];

describe("a sniff file", () => {
  it("reads the example of its own description", () => {
    expect(readSniffFile(lineOf(example))).toEqual({ sniffs: [example], faults: [] });
  });

  it("keeps unknown keys, on every level, on a round trip", () => {
    const more = {
      ...example,
      cook: "Ana",
      sniffer: {
        ...example.sniffer,
        case: "wood",
        channels: [{ sensor: 0, heaterC: null, dwellMs: null, x: 1 }],
      },
      headspace: { ...example.headspace, cover: true },
    };
    expect(JSON.parse(writeSniffFile(readSniffFile(lineOf(more)).sniffs))).toEqual(more);
  });

  it("refuses a bad line with its number and keeps the good ones around it", () => {
    const text = [lineOf(example), "{not json", "", lineOf({ ...example, id: "s2" })].join("\r\n");
    const read = readSniffFile(`\uFEFF${text}`);
    expect(read.sniffs.map((sniff) => sniff.id)).toEqual(["s1", "s2"]);
    expect(read.faults).toHaveLength(1);
    expect(read.faults[0]).toMatchObject({ line: 2, field: "" });
    expect(read.faults[0]?.cause).toContain("is not JSON");
  });

  it.each([
    ["another format", { format: "nidor-sniff/2" }, "format"],
    ["a resistance of zero", { headspace: { atMs: [0], ohm: [[0]] } }, "headspace.ohm.0.0"],
    ["a negative resistance", { cleanAir: { atMs: [0], ohm: [[-5]] } }, "cleanAir.ohm.0.0"],
    ["a missing headspace", { headspace: undefined }, "headspace"],
    ["no sweep at all", { headspace: { atMs: [], ohm: [] } }, "headspace.atMs"],
    ["a sweep of the wrong width", { headspace: { atMs: [0], ohm: [[1, 2]] } }, "headspace.ohm.0"],
    [
      "a clean-air sweep of the wrong width",
      { cleanAir: { atMs: [0, 1], ohm: [[1], []] } },
      "cleanAir.ohm.1",
    ],
    ["times without sweeps", { headspace: { atMs: [0, 1], ohm: [[1]] } }, "headspace"],
    ["time running backwards", { headspace: { atMs: [5, 1], ohm: [[1], [1]] } }, "headspace"],
    ["an unknown word for a group", { groups: { meat: "maybe" } }, "groups.meat"],
    ["101 % humidity", { air: { headspace: { humidityPct: 101 } } }, "air.headspace.humidityPct"],
    ["a date that is none", { takenAt: "yesterday" }, "takenAt"],
    ["no channels", { sniffer: { id: "n1", channels: [] } }, "sniffer.channels"],
    ["a text where a list belongs", { headspace: "none" }, "headspace"],
  ])("refuses %s and names the field", (_what, change, field) => {
    const fault = faultOf(change);
    expect(fault?.line).toBe(1);
    expect(fault?.field).toBe(field);
    expect(fault?.cause.length).toBeGreaterThan(0);
  });

  it.each(["[]", "3", "null", '"text"', "{}", '{"format":"nidor-sniff/1"}'])(
    "refuses the line %s",
    (line) => {
      const read = readSniffFile(line);
      expect(read.sniffs).toEqual([]);
      expect(read.faults).toHaveLength(1);
    },
  );

  it("never throws, whatever the line holds", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (line) => {
        const { sniffs, faults } = readSniffFile(line);
        const filledLines = line.split(/\r?\n/).filter((part) => part.trim() !== "").length;
        expect(sniffs.length + faults.length).toBeLessThanOrEqual(filledLines);
      }),
      { numRuns: 300 },
    );
  });

  it("round-trips any sniff", () => {
    const ohm = fc.double({ min: 1e-3, max: 1e9, noNaN: true });
    const phase = (channels: number) =>
      fc.array(fc.array(ohm, { minLength: channels, maxLength: channels }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }).chain((n) => fc.tuple(fc.constant(n), phase(n))),
        ([n, sweeps]) => {
          const sniff: Sniff = {
            ...(example as unknown as Sniff),
            sniffer: {
              id: "n",
              channels: Array.from({ length: n }, (_, sensor) => ({ sensor, heaterC: null, dwellMs: null })),
            },
            cleanAir: undefined,
            headspace: { atMs: sweeps.map((_, i) => i * 1000), ohm: sweeps },
          };
          const back = readSniffFile(writeSniffFile([sniff]));
          expect(back.faults).toEqual([]);
          expect(back.sniffs[0]?.headspace).toEqual(sniff.headspace);
        },
      ),
    );
  });
});

it("a prefix keeps the sweeps up to its time, and always the first", () => {
  const sniff = example as unknown as Sniff;
  expect(headspacePrefix(sniff, 9_999).headspace.atMs).toEqual([0]);
  expect(headspacePrefix(sniff, 10_000).headspace.atMs).toEqual([0, 10_000]);
  expect(headspacePrefix(sniff, -1).headspace.ohm).toEqual([[30000]]);
});

const openData = new URL("../../../shared/open-data/", import.meta.url);
describe.skipIf(!existsSync(openData))("public gas-sensor data in this format", () => {
  // Counts as given in the README beside the data.
  it.each([
    ["beef36h", 540, 9],
    ["hops30", 230, 7],
    ["smellnet50", 300, 7],
  ])("%s: %i sniffs of %i channels, unchanged by a round trip", (name, sniffCount, channelCount) => {
    const text = readFileSync(new URL(`${name}.sniffs.jsonl`, openData), "utf8");
    const { sniffs, faults } = readSniffFile(text);
    expect(faults).toEqual([]);
    expect(sniffs).toHaveLength(sniffCount);
    expect(new Set(sniffs.map((sniff) => sniff.sniffer.channels.length))).toEqual(new Set([channelCount]));
    expect(readSniffFile(writeSniffFile(sniffs)).sniffs).toEqual(sniffs);
  });
});
