import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseChannelTable, type ChannelTable } from "../../src/peripheral/channelTable.js";
import { plainTable } from "../../src/peripheral/plainTable.js";
import { sweepPlan } from "../../src/peripheral/sweepPlan.js";
import { twoSensors } from "./channelTables.js";

const parse = (value: unknown) => parseChannelTable(JSON.stringify(value));
const parsed = (value: unknown): ChannelTable => {
  const table = parse(value);
  if (!table.ok) throw new Error(`${table.error.field} ${table.error.cause}`);
  return table.value;
};

describe("a channel table", () => {
  it("is read with what it leaves out", () => {
    const table = parsed({
      format: "nidor-channels/1",
      channels: [{ sensor: 0, resistance: "in_resistance" }],
    });
    expect(table).toEqual({
      sweepPeriodMs: 1000,
      warmUpMs: 180_000,
      channels: [
        {
          sensor: 0,
          heaterC: null,
          dwellMs: null,
          resistor: { kind: "resistance", name: { device: null, channel: "in_resistance" } },
          heater: [],
        },
      ],
      air: { temperature: null, humidity: null, pressure: null },
      purge: { forMs: 20_000, heater: [] },
      off: [],
      range: { lowestOhm: 1, highestOhm: 1e12 },
    });
  });

  it("may take the air and a heater from another device", () => {
    const table = parsed({
      format: "nidor-channels/1",
      channels: [
        {
          sensor: 0,
          resistance: "in_resistance0",
          heater: [{ device: "device2", attribute: "out_voltage0_raw", value: "900" }],
        },
      ],
      air: { humidity: { device: "damp", channel: "in_humidityrelative" } },
      off: [{ device: "device2", attribute: "out_voltage0_raw", value: "0" }],
    });
    expect(table.air.humidity).toEqual({ device: "damp", channel: "in_humidityrelative" });
    expect(table.channels[0]?.heater[0]?.device).toBe("device2");
  });

  const channel = { sensor: 0, resistance: "in_resistance0" };
  const withChannel = (change: object) => ({
    format: "nidor-channels/1",
    channels: [{ ...channel, ...change }],
  });
  const heater = [{ attribute: "out_voltage0_raw", value: "900" }];
  it.each([
    ["no format", { channels: [channel] }, "format"],
    ["another format", { format: "other/1", channels: [channel] }, "format"],
    ["no channels", { format: "nidor-channels/1", channels: [] }, "channels"],
    ["65 channels", { format: "nidor-channels/1", channels: Array(65).fill(channel) }, "channels"],
    ["a word it does not know", withChannel({ heatrC: 200 }), "channels.0.heatrC"],
    ["a sensor below 0", withChannel({ sensor: -1 }), "channels.0.sensor"],
    ["half a degree", withChannel({ heaterC: 200.5 }), "channels.0.heaterC"],
    [
      "the attribute's whole name",
      withChannel({ resistance: "in_resistance0_raw" }),
      "channels.0.resistance",
    ],
    ["a temperature as resistance", withChannel({ resistance: "in_temp" }), "channels.0.resistance"],
    ["no resistance at all", withChannel({ resistance: undefined }), "channels.0"],
    ["both resistance and divider", withChannel({ divider: dividerOf({}) }), "channels.0"],
    [
      "a divider without a load",
      withChannel({ resistance: undefined, divider: dividerOf({ loadOhm: 0 }) }),
      "channels.0.divider.loadOhm",
    ],
    [
      "a heater outside its folder",
      withChannel({ heater: [{ attribute: "../../x", value: "1" }] }),
      "channels.0.heater.0.attribute",
    ],
    [
      "a value that is no text",
      withChannel({ heater: [{ attribute: "out_voltage0_raw", value: 900 }] }),
      "channels.0.heater.0.value",
    ],
    ["a heater that is never switched off", withChannel({ heater }), "off"],
    ["steps longer than a sweep", { ...withChannel({ dwellMs: 600 }), sweepPeriodMs: 500 }, "sweepPeriodMs"],
    ["an empty range", { ...withChannel({}), range: { lowestOhm: 5, highestOhm: 5 } }, "range"],
  ])("is refused with %s, and the place is named", (_what, value, field) => {
    const table = parse(value);
    expect(table.ok ? "taken" : table.error.field).toBe(field);
    expect(table.ok ? "" : table.error.cause).not.toBe("");
  });

  it("that is not JSON is refused", () => {
    expect(parseChannelTable("{")).toMatchObject({ ok: false, error: { field: "" } });
  });
});

function dividerOf(change: object): object {
  return {
    voltage: "in_voltage0",
    supply: { millivolt: 3300 },
    loadOhm: 10_000,
    atSupply: "sensor",
    ...change,
  };
}

describe("the plan of a sweep", () => {
  it("steps the sensors side by side, and reads each step at its end, before the next one heats", () => {
    // Counted by hand: sensor 0 dwells 300 + 500 ms, sensor 1 dwells 400 ms.
    const plan = sweepPlan(parsed(twoSensors)).map(({ atMs, writes, reads }) => [
      atMs,
      writes.map(({ attribute, value }) => `${attribute}=${value}`).join() || `read ${reads.join()}`,
    ]);
    expect(plan).toEqual([
      [0, "out_voltage0_raw=900"],
      [0, "out_voltage1_raw=700"],
      [300, "read 0"],
      [300, "out_voltage0_raw=1500"],
      [400, "read 2"],
      [800, "read 1"],
    ]);
  });

  it("of channels without dwell spreads a sensor's steps evenly over the sweep", () => {
    const channels = [1, 2, 3, 4].map(() => ({ sensor: 0, resistance: "in_resistance0" }));
    const table = parsed({ format: "nidor-channels/1", sweepPeriodMs: 2000, channels });
    expect(sweepPlan(table).map(({ atMs }) => atMs)).toEqual([500, 1000, 1500, 2000]);
  });
});

describe("a device without a table", () => {
  it("is taken as it is: each resistance a sensor, in the order of their numbers", () => {
    const table = plainTable([
      "in_resistance10_raw",
      "in_resistance2_raw",
      "in_temp_input",
      "name",
      "in_resistance_scale",
    ]);
    expect(table.channels.map(({ sensor, resistor }) => [sensor, resistor])).toEqual([
      [0, { kind: "resistance", name: { device: null, channel: "in_resistance2" } }],
      [1, { kind: "resistance", name: { device: null, channel: "in_resistance10" } }],
    ]);
    expect(table.air).toEqual({
      temperature: { device: null, channel: "in_temp" },
      humidity: null,
      pressure: null,
    });
  });

  it("with one resistance that has both a raw and a scaled attribute has one channel", () => {
    expect(plainTable(["in_resistance_raw", "in_resistance_input"]).channels).toHaveLength(1);
  });
});

describe("the build guide", () => {
  const guide = readFileSync(new URL("../../src/peripheral/BUILD.md", import.meta.url), "utf8");
  const example = /```json channels\n(.*?)```/s.exec(guide)?.[1] ?? "";

  it("shows a table that is right, with every word that a table may have", () => {
    const table = parseChannelTable(example);
    expect(table).toMatchObject({ ok: true });
    const words = [...guide.matchAll(/^\| `(\w+)` /gm)].map((match) => match[1]);
    for (const word of words) expect(example).toContain(`"${word}"`);
    for (const word of Object.keys(JSON.parse(example) as object)) {
      if (word !== "format" && word !== "channels") expect(words).toContain(word);
    }
  });

  it("says what is taken for what is missing", () => {
    const bare = parsed({
      format: "nidor-channels/1",
      channels: [{ sensor: 0, resistance: "in_resistance" }],
    });
    const missing = (word: string) =>
      guide
        .split("\n")
        .find((line) => line.startsWith(`| \`${word}\``))
        ?.split("|")[3];
    expect(missing("sweepPeriodMs")).toContain(String(bare.sweepPeriodMs));
    expect(missing("warmUpMs")).toContain(String(bare.warmUpMs));
    expect(missing("purge")).toContain(String(bare.purge.forMs));
    expect(missing("range")).toContain(`${bare.range.lowestOhm} and ${bare.range.highestOhm}`);
  });
});
