// A whole sensor sniffer on attributes in memory and a clock that is told to pass.
import { describe, expect, it } from "vitest";
import { parseChannelTable } from "../../src/peripheral/channelTable.js";
import { createIioPeripheral } from "../../src/peripheral/iioPeripheral.js";
import { openIio } from "../../src/peripheral/iioReader.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeHumidity, decodeTemperature } from "../../src/profile/environment.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeStatus } from "../../src/profile/status.js";
import { decodeSweepFrame } from "../../src/profile/sweepFrame.js";
import {
  BATTERY_LEVEL,
  CONTROL,
  HUMIDITY,
  LAYOUT,
  STATUS,
  SWEEP,
  TEMPERATURE,
} from "../../src/profile/uuids.js";
import { twoSensors } from "./channelTables.js";
import { fakeClock } from "./fakeClock.js";
import { memorySysfs } from "./memorySysfs.js";

const FOLDER = "bus/iio/devices/iio:device0";
const heaterOf = (sensor: number) => `${FOLDER}/out_voltage${sensor}_raw`;
const resistanceOf = (sensor: number) => `${FOLDER}/in_resistance${sensor}_raw`;

async function build(change: object = {}) {
  const sysfs = memorySysfs({
    [resistanceOf(0)]: "1000",
    [resistanceOf(1)]: "2000",
    [heaterOf(0)]: "0",
    [heaterOf(1)]: "0",
    [`${FOLDER}/in_temp_input`]: "20000",
    [`${FOLDER}/in_humidityrelative_input`]: "40000",
    [`${FOLDER}/in_pressure_input`]: "101.3",
  });
  // A film that halves its resistance from one heater setting to a higher one, so that steps can be told apart.
  sysfs.live.set(resistanceOf(0), () =>
    String(Math.round(1e6 / Math.max(1, Number(sysfs.files.get(heaterOf(0)))))),
  );
  const table = parseChannelTable(JSON.stringify({ ...twoSensors, ...change }));
  if (!table.ok) throw new Error(table.error.cause);
  const reader = await openIio(sysfs, "device0", { table: table.value, file: "t" });
  if (!reader.ok) throw new Error(reader.error.kind);
  const clock = fakeClock();
  const kept: number[] = [];
  const charge = { pct: 80 as number | null };
  const peripheral = createIioPeripheral({
    reader: reader.value,
    clock,
    snifferId: "00a1b2c3d4e5f607",
    model: "m",
    firmware: "f",
    heatedBeforeMs: 5,
    readBattery: () => Promise.resolve(charge.pct),
    keepHeated: (heatedMs) => Promise.resolve(void kept.push(heatedMs)),
  });
  const frames: Uint8Array[] = [];
  const states: string[] = [];
  const air: (number | null)[] = [];
  peripheral.onNotification(({ address, bytes }) => {
    if (address === SWEEP) frames.push(bytes);
    const status = decodeStatus(bytes);
    if (address === STATUS && status.ok) states.push(status.value.state);
    const temperature = decodeTemperature(bytes);
    if (address === TEMPERATURE && temperature.ok) air.push(temperature.value);
  });
  const command = (kind: "stop" | "purge") => peripheral.write(CONTROL, encodeControl({ kind }));
  const start = (run: number) => peripheral.write(CONTROL, encodeControl({ kind: "start", run }));
  const sweeps = () =>
    frames.flatMap((bytes) => {
      const frame = decodeSweepFrame(bytes);
      return frame.ok ? [frame.value] : [];
    });
  peripheral.start();
  await clock.pass(0);
  return { sysfs, clock, peripheral, kept, charge, states, air, command, start, sweeps };
}

const changesOf = (list: readonly string[]) => list.filter((one, i) => one !== list[i - 1]);

describe("a sniffer on a heated sensor", () => {
  it("steps its heaters from the first moment, and reads each channel at its own step", async () => {
    const { sysfs, clock, start, sweeps } = await build();
    await clock.pass(6000);
    expect(start(1)).toBe(0);
    await clock.pass(2500);
    // 1e6 / 900 and 1e6 / 1500, rounded, by the film above; 2000 ohm never change.
    expect(
      sweeps()
        .slice(0, 2)
        .flatMap(({ ohm }) => ohm),
    ).toEqual([1111, 667, 2000]);
    const once = [`${heaterOf(0)}=900`, `${heaterOf(1)}=700`, `${heaterOf(0)}=1500`];
    const off = [`${heaterOf(0)}=0`, `${heaterOf(1)}=0`];
    expect(sysfs.written.slice(0, 8)).toEqual([...off, ...once, ...once]);
  });

  it("sweeps to the beat of its layout", async () => {
    const { clock, start, sweeps, peripheral } = await build();
    const layout = peripheral.read(LAYOUT);
    expect(layout.ok && decodeLayout(layout.value)).toMatchObject({
      value: {
        sweepPeriodMs: 1000,
        warmUpMs: 6000,
        channels: [{ heaterC: 200 }, { heaterC: 320 }, { heaterC: 150 }],
      },
    });
    await clock.pass(6100);
    start(1);
    await clock.pass(5000);
    const begun = sweeps().filter(({ firstChannel }) => firstChannel === 0);
    expect(begun.map(({ deviceTimeMs }) => deviceTimeMs)).toEqual([7000, 8000, 9000, 10_000]);
    expect(begun.map(({ counter }) => counter)).toEqual([0, 1, 2, 3]);
  });

  it("is ready after its warm-up and not before", async () => {
    const { clock, states, start } = await build();
    await clock.pass(5999);
    expect(changesOf(states)).toEqual(["warming"]);
    await clock.pass(1);
    expect(start(1)).toBe(0);
    expect(changesOf(states)).toEqual(["warming", "ready", "measuring"]);
  });

  it("measures while it warms if asked to, and says when it is warm (PROFILE.md sections 5 and 6)", async () => {
    const { clock, states, start } = await build();
    await clock.pass(2000);
    expect(start(1)).toBe(0);
    await clock.pass(4000);
    expect(changesOf(states)).toEqual(["warming", "measuring"]);
    // Begun at 2 s; told on beginning, counted down at 4 s, and told once more when warm at 6 s.
    expect(states.filter((state) => state === "measuring")).toHaveLength(3);
  });

  it("drives its heaters hot for a purge, and then steps on", async () => {
    const { sysfs, clock, command, states } = await build();
    await clock.pass(6000);
    expect(command("purge")).toBe(0);
    sysfs.written.length = 0;
    await clock.pass(1000);
    expect(sysfs.written.slice(-2)).toEqual([`${heaterOf(0)}=2000`, `${heaterOf(1)}=2000`]);
    await clock.pass(3000);
    expect(sysfs.files.get(heaterOf(0))).toBe("2000");
    await clock.pass(2000);
    expect(sysfs.files.get(heaterOf(0))).not.toBe("2000");
    expect(changesOf(states)).toEqual(["warming", "ready", "purging", "ready"]);
  });

  it("reads the air and the battery between sweeps, and says when it does not know", async () => {
    const { sysfs, clock, peripheral, air, charge } = await build();
    await clock.pass(10_000);
    expect(air.length).toBeGreaterThanOrEqual(4); // every 2 s
    expect(air.at(-1)).toBe(20);
    expect(peripheral.read(BATTERY_LEVEL)).toEqual({ ok: true, value: Uint8Array.of(80) });
    sysfs.faults.set(`${FOLDER}/in_humidityrelative_input`, "failed");
    charge.pct = null;
    await clock.pass(60_000);
    const humidity = peripheral.read(HUMIDITY);
    expect(humidity.ok && decodeHumidity(humidity.value)).toEqual({ ok: true, value: null });
    expect(peripheral.read(BATTERY_LEVEL)).toEqual({ ok: false, error: "unknown" });
  });

  it("sends a channel that fails as not measured, and goes on with the others", async () => {
    const { sysfs, clock, start, sweeps, states } = await build();
    await clock.pass(6000);
    start(1);
    sysfs.faults.set(resistanceOf(1), "busy");
    await clock.pass(10_000);
    expect(
      sweeps()
        .filter(({ firstChannel }) => firstChannel === 2)
        .map(({ ohm }) => ohm[0]),
    ).toContain(null);
    expect(changesOf(states).at(-1)).toBe("measuring");
  });

  it("is at fault when the sensor is pulled out, and warms up anew when it is back", async () => {
    const { sysfs, clock, start, states, peripheral } = await build();
    await clock.pass(6000);
    start(1);
    await clock.pass(2000);
    sysfs.faults.set(resistanceOf(0), "gone");
    await clock.pass(10_000);
    expect(changesOf(states)).toEqual(["warming", "ready", "measuring", "fault"]);
    expect(peripheral.write(CONTROL, encodeControl({ kind: "start", run: 2 }))).toBe(0x80);
    sysfs.faults.clear();
    await clock.pass(9000);
    expect(changesOf(states).slice(3)).toEqual(["fault", "cold", "warming", "ready"]);
  });

  it("is at fault when every channel is silent for five sweeps", async () => {
    const { sysfs, clock, states } = await build();
    await clock.pass(6000);
    sysfs.live.delete(resistanceOf(0));
    for (const sensor of [0, 1]) sysfs.files.set(resistanceOf(sensor), "1"); // below the table's 100 ohm
    await clock.pass(4000);
    expect(states.at(-1)).toBe("ready");
    await clock.pass(3000);
    expect(states.at(-1)).toBe("fault");
  });

  it("shows a heater that cannot be set by its flag, and recovers", async () => {
    const { sysfs, clock, peripheral } = await build();
    const status = () => {
      const value = peripheral.read(STATUS);
      const read = value.ok ? decodeStatus(value.value) : undefined;
      return read?.ok === true ? read.value : undefined;
    };
    await clock.pass(6000);
    sysfs.faults.set(heaterOf(0), "failed");
    await clock.pass(2000);
    expect(status()).toMatchObject({ state: "fault", heaterFault: true });
    sysfs.faults.clear();
    await clock.pass(4000);
    expect(status()).toMatchObject({ state: "warming", heaterFault: false });
  });

  it("leaves its heaters off and its hours kept when it ends", async () => {
    const { sysfs, clock, peripheral, kept } = await build();
    await clock.pass(90_250);
    await peripheral.stop();
    expect([sysfs.files.get(heaterOf(0)), sysfs.files.get(heaterOf(1))]).toEqual(["0", "0"]);
    expect(kept).toEqual([90_255]); // heated 5 ms before: counted by hand
  });

  it("keeps its hours now and then, for the plug may be pulled", async () => {
    const { clock, kept } = await build();
    await clock.pass(1_300_000);
    expect(kept).toHaveLength(2); // every ten minutes: counted by hand
  });
});
