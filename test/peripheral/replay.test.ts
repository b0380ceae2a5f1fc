// A recorded sniff, played and taken down again by the phone's own code, is the sniff that was recorded.
import { describe, expect, it } from "vitest";
import { recordingOf } from "../../src/peripheral/recording.js";
import { createReplayPeripheral } from "../../src/peripheral/replayPeripheral.js";
import { assembleSweeps, beginSweeps, finishSweeps } from "../../src/profile/assembleSweeps.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeHumidity } from "../../src/profile/environment.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeStatus } from "../../src/profile/status.js";
import { CONTROL, HUMIDITY, LAYOUT, PRESSURE, STATUS, SWEEP } from "../../src/profile/uuids.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { fakeClock } from "./fakeClock.js";

const sniff = (id: string, change: Partial<Sniff> = {}): Sniff => ({
  format: "nidor-sniff/1",
  id,
  takenAt: "2026-08-07T18:00:00Z",
  sniffer: {
    id: "00a1b2c3d4e5f607",
    channels: [
      { sensor: 0, heaterC: 200, dwellMs: 500 },
      { sensor: 0, heaterC: 320, dwellMs: 500 },
      { sensor: 1, heaterC: null, dwellMs: null },
    ],
  },
  plate: "bowl-1",
  occasion: "evening-1",
  dish: "clear broth",
  groups: {},
  cleanAir: {
    atMs: [0, 1000, 2000],
    ohm: [
      [100, 200, 300],
      [101, 201, 301],
      [102, 202, 302],
    ],
  },
  headspace: {
    atMs: [0, 1000],
    ohm: [
      [50, 60, 70],
      [40, 50, 60],
    ],
  },
  air: {
    cleanAir: { humidityPct: 41, pressurePa: 101_300 },
    headspace: { humidityPct: 55, pressurePa: 101_310 },
  },
  cleanAirAgeMs: 4000,
  ...change,
});
const noId = (): string => {
  throw new Error("asked for an id");
};

async function playing(sniffs: readonly Sniff[]) {
  const recording = recordingOf(sniffs, noId);
  if (!recording.ok) throw new Error(recording.error);
  const clock = fakeClock();
  const played: string[] = [];
  const peripheral = createReplayPeripheral({
    recording: recording.value,
    clock,
    model: "m",
    firmware: "f",
    onPlay: (id) => played.push(id),
  });
  const frames: Uint8Array[] = [];
  const humidities: (number | null)[] = [];
  peripheral.onNotification(({ address, bytes }) => {
    if (address === SWEEP) frames.push(bytes);
    const humidity = decodeHumidity(bytes);
    if (address === HUMIDITY && humidity.ok) humidities.push(humidity.value);
  });
  peripheral.start();
  await clock.pass(1000);
  const state = () => {
    const value = peripheral.read(STATUS);
    const status = value.ok ? decodeStatus(value.value) : undefined;
    return status?.ok === true ? status.value.state : "?";
  };
  /** One run from start to the end of the recording, as the phone puts it together. */
  const run = async (number: number, forMs: number) => {
    frames.length = 0;
    expect(peripheral.write(CONTROL, encodeControl({ kind: "start", run: number }))).toBe(0);
    await clock.pass(forMs);
    let assembly = beginSweeps(number, 3);
    const steps = frames.map((frame) => {
      const step = assembleSweeps(assembly, frame);
      assembly = step.state;
      return step;
    });
    steps.push(finishSweeps(assembly));
    expect(steps.flatMap(({ faults }) => faults)).toEqual([]);
    return steps.flatMap(({ sweeps }) => sweeps);
  };
  return { peripheral, clock, played, humidities, state, run };
}

describe("a recorded sniff", () => {
  it("comes over the air as it was taken: sweeps, their times, and the gap before the plate", async () => {
    const { run, peripheral } = await playing([sniff("a")]);
    const sweeps = await run(3, 20_000);
    expect(sweeps.map(({ ohm }) => ohm)).toEqual([...sniff("a").cleanAir!.ohm, ...sniff("a").headspace.ohm]);
    const firstMs = sweeps[0]!.atMs;
    // Counted by hand: clean air at 0, 1 and 2 s, the first over the plate 4 s after the last of these.
    expect(sweeps.map(({ atMs }) => atMs - firstMs)).toEqual([0, 1000, 2000, 6000, 7000]);
    const layout = peripheral.read(LAYOUT);
    expect(layout.ok && decodeLayout(layout.value)).toMatchObject({
      value: {
        snifferId: "00a1b2c3d4e5f607",
        sweepPeriodMs: 1000,
        warmUpMs: 0,
        channels: sniff("a").sniffer.channels,
      },
    });
  });

  it("is not sent before its time", async () => {
    const { run } = await playing([sniff("a")]);
    // Each sweep is over one period after it began: at 3.4 s three are.
    expect(await run(1, 3400)).toHaveLength(3);
  });

  it("ends the run when nothing is left, and the next start plays the next one, round and round", async () => {
    const { run, played, state } = await playing([
      sniff("a"),
      sniff("b", { headspace: { atMs: [0], ohm: [[7, 8, 9]] } }),
    ]);
    await run(1, 20_000);
    expect(state()).toBe("ready");
    expect((await run(2, 20_000)).at(-1)?.ohm).toEqual([7, 8, 9]);
    await run(3, 20_000);
    expect(played).toEqual(["a", "b", "a"]);
  });

  it("plays anew when it is started in mid-run", async () => {
    const { run, played } = await playing([sniff("a"), sniff("b")]);
    await run(1, 2500);
    expect(await run(2, 20_000)).toHaveLength(5);
    expect(played).toEqual(["a", "b"]);
  });

  it("stops when it is told to", async () => {
    const { run, peripheral, clock } = await playing([sniff("a")]);
    await run(1, 2500);
    peripheral.write(CONTROL, encodeControl({ kind: "stop" }));
    await clock.pass(10_000);
    expect(await run(2, 0)).toEqual([]);
  });

  it("brings the air of its phases", async () => {
    const { run, humidities } = await playing([sniff("a")]);
    await run(1, 20_000);
    expect(humidities.filter((value, i) => value !== humidities[i - 1])).toEqual([41, 55]);
  });

  it("without clean air begins over the plate", async () => {
    const bare = sniff("a");
    const { run } = await playing([{ ...bare, cleanAir: undefined }]);
    expect((await run(1, 20_000)).map(({ ohm }) => ohm)).toEqual(bare.headspace.ohm);
  });

  it("leaves out the characteristic of a reading it does not have", async () => {
    const half = sniff("b", { air: { headspace: { humidityPct: 50 } } });
    const { peripheral } = await playing([sniff("a"), half]);
    expect(peripheral.read(PRESSURE)).toEqual({ ok: false, error: "absent" });
    expect(peripheral.read(HUMIDITY).ok).toBe(true);
  });
});

describe("what cannot be played", () => {
  const why = (...sniffs: Sniff[]) => {
    const recording = recordingOf(sniffs, () => "1122334455667788");
    return recording.ok ? "" : recording.error;
  };
  const channels = sniff("a").sniffer.channels;

  it("is named", () => {
    expect(why()).toBe("it holds no sniff");
    expect(why(sniff("a"), sniff("b", { sniffer: { id: "ffff000000000000", channels } }))).toContain(
      "sniff b",
    );
    expect(
      why(sniff("a"), sniff("b", { sniffer: { id: "00a1b2c3d4e5f607", channels: channels.slice(1) } })),
    ).toContain("sniff b");
    const tooHot = [{ sensor: 0, heaterC: 40_000, dwellMs: 1 }];
    expect(why(sniff("a", { sniffer: { id: "x", channels: tooHot } }))).toContain("heater temperature");
    expect(why(sniff("a"))).toBe("");
  });

  it("gets an id of the profile's shape where the file has another", () => {
    const other = recordingOf([sniff("a", { sniffer: { id: "my sniffer", channels } })], (text) => {
      expect(text).toBe("my sniffer");
      return "1122334455667788";
    });
    expect(other.ok && other.value.layout.snifferId).toBe("1122334455667788");
  });

  it("takes the median step for the sweep period, whatever single gaps there are", () => {
    const atMs = [0, 2000, 4000, 60_000, 62_000];
    const ohm = atMs.map(() => [1, 2, 3]);
    const gappy = recordingOf([sniff("a", { cleanAir: undefined, headspace: { atMs, ohm } })], noId);
    expect(gappy.ok && gappy.value.layout.sweepPeriodMs).toBe(2000);
    const single = recordingOf(
      [sniff("a", { cleanAir: undefined, headspace: { atMs: [0], ohm: [[1, 2, 3]] } })],
      noId,
    );
    expect(single.ok && single.value.layout.sweepPeriodMs).toBe(1000);
  });
});
