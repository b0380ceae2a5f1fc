// Reading the kernel's attributes, against a tree of real files.
// Units and formula: Linux, Documentation/ABI/testing/sysfs-bus-iio.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findBattery } from "../../src/peripheral/battery.js";
import { parseChannelTable } from "../../src/peripheral/channelTable.js";
import { dividerOhm } from "../../src/peripheral/dividerOhm.js";
import { findDevice } from "../../src/peripheral/iioDevices.js";
import { findQuantity, readQuantity } from "../../src/peripheral/iioQuantity.js";
import { openIio } from "../../src/peripheral/iioReader.js";
import { openSysfs, sysfsFault } from "../../src/peripheral/sysfs.js";
import { twoSensors } from "./channelTables.js";
import { memorySysfs } from "./memorySysfs.js";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "nidor-sysfs-"));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const DEVICE = "bus/iio/devices/iio:device0";
function lay(files: Readonly<Record<string, string>>, device = DEVICE): void {
  for (const [name, text] of Object.entries(files)) {
    const file = join(root, device, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, `${text}\n`);
  }
}
const tableOf = (value: unknown) => {
  const table = parseChannelTable(JSON.stringify(value));
  if (!table.ok) throw new Error(table.error.cause);
  return { table: table.value, file: "channels.json" };
};
const read = async (channel: string, attributes: Readonly<Record<string, string>>) => {
  lay(attributes);
  const quantity = findQuantity(Object.keys(attributes), channel);
  if (quantity === undefined) return "absent";
  const value = await readQuantity(openSysfs(root), DEVICE, quantity);
  return value.ok ? value.value : value.error.kind;
};

describe("one reading", () => {
  it("takes a scaled value as it stands", async () => {
    expect(await read("in_resistance", { in_resistance_input: "51234" })).toBe(51234);
  });

  it("adds the offset to a raw value and then scales it", async () => {
    // Counted by hand: (1200 + 34) x 2.5 = 3085, where scaling first would give 3034.
    const files = {
      in_resistance_raw: "1200",
      in_resistance_offset: "34",
      in_resistance_scale: "2.500000000",
    };
    expect(await read("in_resistance", files)).toBe(3085);
  });

  it("takes scale and offset that are shared by all channels of a type", async () => {
    const files = { in_resistance1_raw: "100", in_resistance_scale: "10", in_resistance_offset: "-20" };
    expect(await read("in_resistance1", files)).toBe(800); // counted by hand
  });

  it("prefers the channel's own scale to the shared one", async () => {
    const files = { in_resistance1_raw: "100", in_resistance1_scale: "3", in_resistance_scale: "10" };
    expect(await read("in_resistance1", files)).toBe(300);
  });

  it("knows the shared scale of a modified and of a differential channel", async () => {
    expect(await read("in_temp_ambient", { in_temp_ambient_raw: "5", in_temp_scale: "20" })).toBe(100);
    const files = {
      "in_voltage0-voltage1_raw": "7",
      "in_voltage-voltage_scale": "0.5",
      in_voltage_scale: "9",
    };
    expect(await read("in_voltage0-voltage1", files)).toBe(3.5);
  });

  it("leaves a value without scale or offset alone", async () => {
    expect(await read("in_resistance", { in_resistance_raw: "77" })).toBe(77);
  });

  it.each(["", "nan", "12 34", "1e3", "0x10", "12,5"])("takes %j for no number", async (text) => {
    expect(await read("in_resistance", { in_resistance_raw: text })).toBe("failed");
  });

  it("is absent where the device does not have it", async () => {
    expect(await read("in_resistance", { in_temp_input: "1" })).toBe("absent");
  });

  it("is the same whichever way a driver splits value, offset and scale", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: -5000, max: 5000 }),
        fc.integer({ min: -5000, max: 5000 }),
        fc.integer({ min: 1, max: 1000 }),
        async (raw, offset, scale) => {
          const files = {
            "d/in_temp_raw": `${raw}`,
            "d/in_temp_offset": `${offset}`,
            "d/in_temp_scale": `${scale}`,
          };
          const sysfs = memorySysfs({ ...files, "e/in_temp_input": `${(raw + offset) * scale}` });
          const split = findQuantity(await sysfs.list("d"), "in_temp")!;
          const whole = findQuantity(await sysfs.list("e"), "in_temp")!;
          expect(await readQuantity(sysfs, "d", split)).toEqual(await readQuantity(sysfs, "e", whole));
        },
      ),
    );
  });
});

describe("a sensor's resistance in a divider", () => {
  it("follows from the voltages as Ohm's law has it", () => {
    // Counted by hand: 3300 mV over a sensor and 10 kilohm; 1100 mV at the joint leave 2200 mV, twice as much.
    expect(dividerOhm(1100, 3300, 10_000, "sensor")).toBeCloseTo(20_000, 6);
    expect(dividerOhm(1100, 3300, 10_000, "load")).toBeCloseTo(5000, 6);
  });

  it("comes back from the voltage that any sensor makes, whichever way round they are wired", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 1e7, noNaN: true }),
        fc.double({ min: 100, max: 1e6, noNaN: true }),
        (sensorOhm, loadOhm) => {
          const jointAbove = (3300 * loadOhm) / (sensorOhm + loadOhm);
          expect(dividerOhm(jointAbove, 3300, loadOhm, "sensor") / sensorOhm).toBeCloseTo(1, 6);
          expect(dividerOhm(3300 - jointAbove, 3300, loadOhm, "load") / sensorOhm).toBeCloseTo(1, 6);
        },
      ),
    );
  });
});

describe("finding a device", () => {
  it("goes by the kernel's number, by label and by name", async () => {
    lay({ name: "film", label: "left" });
    lay({ name: "damp" }, "bus/iio/devices/iio:device1");
    mkdirSync(join(root, "bus/iio/devices/trigger0"));
    const sysfs = openSysfs(root);
    for (const wanted of ["device0", "iio:device0", "film", "left"]) {
      expect(await findDevice(sysfs, wanted)).toMatchObject({ ok: true, value: { folder: DEVICE } });
    }
    expect(await findDevice(sysfs, "right")).toEqual({
      ok: false,
      error: ["device0 (left, film)", "device1 (damp)"],
    });
  });

  it("finds nothing on a machine without Industrial I/O", async () => {
    expect(await findDevice(openSysfs(root), "device0")).toEqual({ ok: false, error: [] });
  });
});

describe("a table put to work", () => {
  const files = {
    name: "film",
    in_resistance0_raw: "512",
    in_resistance1_raw: "48",
    in_resistance_scale: "100",
    in_temp_input: "23450",
    in_humidityrelative_input: "56780",
    in_pressure_input: "101.325000000",
    out_voltage0_raw: "1",
    out_voltage1_raw: "1",
  };

  it("reads ohm, and the air in the profile's units", async () => {
    lay(files);
    const reader = await openIio(openSysfs(root), "film", tableOf(twoSensors));
    if (!reader.ok) throw new Error(reader.error.kind);
    expect(await reader.value.readChannel(0)).toEqual({ ok: true, value: 51_200 });
    expect(await reader.value.readChannel(2)).toEqual({ ok: true, value: 4800 });
    const air = await reader.value.readAir();
    expect(air.temperatureC).toBeCloseTo(23.45, 9); // 23450 milli degrees Celsius
    expect(air.humidityPct).toBeCloseTo(56.78, 9); // 56780 milli per cent
    expect(air.pressurePa).toBeCloseTo(101_325, 6); // 101.325 kilopascal
  });

  it("switches the heaters off first, and never makes a file that is not there", async () => {
    lay(files);
    const reader = await openIio(openSysfs(root), "device0", tableOf(twoSensors));
    expect(readFileSync(join(root, DEVICE, "out_voltage0_raw"), "utf8")).toBe("0\n");
    if (!reader.ok) throw new Error(reader.error.kind);
    rmSync(join(root, DEVICE, "out_voltage0_raw"));
    const set = await reader.value.set([{ device: null, attribute: "out_voltage0_raw", value: "5" }]);
    expect(set).toMatchObject({ ok: false, error: { kind: "absent" } });
    expect(await openSysfs(root).list(DEVICE)).not.toContain("out_voltage0_raw");
  });

  it("reads a divider, with the supply measured", async () => {
    lay({ in_voltage0_raw: "1100", in_voltage1_raw: "3300", in_voltage_scale: "1.000000" });
    const divider = { voltage: "in_voltage0", supply: "in_voltage1", loadOhm: 10_000, atSupply: "sensor" };
    const table = tableOf({ format: "nidor-channels/1", channels: [{ sensor: 0, divider }] });
    const reader = await openIio(openSysfs(root), "device0", table);
    if (!reader.ok) throw new Error(reader.error.kind);
    expect(await reader.value.readChannel(0)).toEqual({ ok: true, value: 20_000 });
    lay({ in_voltage0_raw: "0" }); // no current: no resistance, however large
    expect(await reader.value.readChannel(0)).toEqual({ ok: true, value: null });
  });

  it("counts as not measured what is out of range, busy, or no number", async () => {
    const sysfs = memorySysfs(
      Object.fromEntries(Object.entries(files).map(([name, text]) => [`${DEVICE}/${name}`, text])),
    );
    const reader = await openIio(sysfs, "device0", tableOf(twoSensors));
    if (!reader.ok) throw new Error(reader.error.kind);
    const raw = `${DEVICE}/in_resistance0_raw`;
    sysfs.files.set(raw, "0.5"); // 50 ohm, below the table's 100
    expect(await reader.value.readChannel(0)).toEqual({ ok: true, value: null });
    sysfs.files.set(raw, "?");
    expect(await reader.value.readChannel(0)).toEqual({ ok: true, value: null });
    sysfs.faults.set(raw, "busy");
    expect(await reader.value.readChannel(0)).toEqual({ ok: true, value: null });
    sysfs.faults.set(raw, "gone");
    expect(await reader.value.readChannel(0)).toMatchObject({ ok: false, error: { kind: "gone" } });
  });

  it.each([
    ["in_humidityrelative_input", "104000", { humidityPct: 100 }],
    ["in_humidityrelative_input", "-2000", { humidityPct: 0 }],
    ["in_humidityrelative_input", "140000", {}],
    ["in_temp_input", "-300000", {}],
    ["in_pressure_input", "0", {}],
  ])("takes an air reading of %s = %s as %j", async (attribute, text, expected) => {
    const only = { ...twoSensors, air: { [airKey(attribute)]: attribute.replace("_input", "") } };
    lay({ ...files, [attribute]: text });
    const reader = await openIio(openSysfs(root), "device0", tableOf(only));
    if (!reader.ok) throw new Error(reader.error.kind);
    expect(await reader.value.readAir()).toEqual(expected);
  });

  const airKey = (attribute: string) =>
    attribute.startsWith("in_temp") ? "temperature" : attribute.startsWith("in_h") ? "humidity" : "pressure";

  it("says which sensors there are when the one asked for is not", async () => {
    lay(files);
    expect(await openIio(openSysfs(root), "device7", null)).toEqual({
      ok: false,
      error: { kind: "noSensor", wanted: "device7", present: ["device0 (film)"] },
    });
  });

  it("says what a device has that is no gas sensor", async () => {
    lay({ in_temp_input: "1", in_voltage0_raw: "2", name: "damp" });
    expect(await openIio(openSysfs(root), "device0", null)).toEqual({
      ok: false,
      error: { kind: "noResistance", device: "device0", attributes: ["in_temp_input", "in_voltage0_raw"] },
    });
  });

  it.each([
    ["in_resistance1_raw", "channels.2.resistance"],
    ["in_pressure_input", "air.pressure"],
    ["out_voltage1_raw", "channels.2.heater.0"],
  ])("names the entry of the table that means the missing %s", async (missing, field) => {
    lay(files);
    rmSync(join(root, DEVICE, missing));
    const opened = await openIio(openSysfs(root), "device0", tableOf(twoSensors));
    expect(opened).toMatchObject({ ok: false, error: { kind: "badTable", file: "channels.json", field } });
  });

  it("names another device that is not there", async () => {
    lay(files);
    const air = { temperature: { device: "damp", channel: "in_temp" } };
    const opened = await openIio(openSysfs(root), "device0", tableOf({ ...twoSensors, air }));
    expect(opened).toMatchObject({ ok: false, error: { kind: "badTable", field: "air.temperature" } });
  });

  it("tells a heater that may not be set from a sensor that does not answer", async () => {
    const sysfs = memorySysfs(
      Object.fromEntries(Object.entries(files).map(([name, text]) => [`${DEVICE}/${name}`, text])),
    );
    sysfs.faults.set(`${DEVICE}/out_voltage1_raw`, "denied");
    const denied = await openIio(sysfs, "device0", tableOf(twoSensors));
    expect(denied).toMatchObject({
      ok: false,
      error: { kind: "notPermitted", what: `${DEVICE}/out_voltage1_raw` },
    });
    sysfs.faults.clear();
    sysfs.faults.set(`${DEVICE}/in_resistance0_raw`, "gone");
    const gone = await openIio(sysfs, "device0", tableOf(twoSensors));
    expect(gone).toMatchObject({ ok: false, error: { kind: "noReading" } });
  });
});

describe("what the kernel answers", () => {
  // errno(3) of the Linux manual.
  it.each([
    ["ENOENT", "absent"],
    ["EACCES", "denied"],
    ["EPERM", "denied"],
    ["ENODEV", "gone"],
    ["ENXIO", "gone"],
    ["EBUSY", "busy"],
    ["EIO", "failed"],
    ["EINVAL", "failed"],
  ])("%s means %s", (code, kind) => {
    expect(sysfsFault("x", Object.assign(new Error(code), { code })).kind).toBe(kind);
  });
});

describe("the board's battery", () => {
  // Linux, Documentation/ABI/testing/sysfs-class-power: type, scope, capacity in per cent.
  it("is the one that is no mouse's", async () => {
    lay({ type: "Mains", online: "1" }, "class/power_supply/ac");
    lay({ type: "Battery", scope: "Device", capacity: "12" }, "class/power_supply/mouse");
    lay({ type: "Battery", capacity: "87" }, "class/power_supply/pack");
    const charge = await findBattery(openSysfs(root));
    expect(await charge?.()).toBe(87);
    lay({ capacity: "unknown" }, "class/power_supply/pack");
    expect(await charge?.()).toBeNull();
  });

  it("is none on a board without one", async () => {
    expect(await findBattery(openSysfs(root))).toBeNull();
  });
});
