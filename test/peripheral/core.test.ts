// The states of a sniffer that measures, against PROFILE.md sections 5 to 7.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assembleSweeps, beginSweeps, finishSweeps } from "../../src/profile/assembleSweeps.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeStatus } from "../../src/profile/status.js";
import { CONTROL, LAYOUT, STATUS, SWEEP } from "../../src/profile/uuids.js";
import {
  createCore,
  heatedSoFarMs,
  statusOf,
  type CoreSetup,
  type PeripheralCore,
} from "../../src/peripheral/core.js";
import { writeValue } from "../../src/peripheral/coreCommand.js";
import { stepCore, type CoreEvent } from "../../src/peripheral/coreStep.js";
import { addressesOf, readValue } from "../../src/peripheral/coreValues.js";
import { isAbandoned, NOBODY, stepPresence, type PresenceEvent } from "../../src/peripheral/presence.js";

const WARM_UP_MS = 10_000;
const setup = (channels = 3): CoreSetup => ({
  layout: {
    profileVersion: { major: 1, minor: 0 },
    snifferId: "00a1b2c3d4e5f607",
    sweepPeriodMs: 1000,
    warmUpMs: WARM_UP_MS,
    channels: Array.from({ length: channels }, (_, sensor) => ({ sensor, heaterC: null, dwellMs: null })),
  },
  senses: { temperature: true, humidity: true, pressure: false, battery: false },
  model: "stall",
  firmware: "1",
  purgeMs: 5000,
  heatedBeforeMs: 0,
  firstSequence: 65_534,
});

/** Plays events, each at its time, and gathers what was sent. */
function played(
  steps: readonly (readonly [number, CoreEvent | "start" | "stop" | "purge"])[],
  from = createCore(setup()),
) {
  let core: PeripheralCore = from;
  const sent = steps.flatMap(([atMs, event]) => {
    const ticked = stepCore(core, atMs, typeof event === "string" ? { kind: "time" } : event);
    core = ticked.core;
    if (typeof event !== "string") return ticked.notifications;
    const command = event === "start" ? { kind: event, run: 9 } : { kind: event };
    const written = writeValue(core, CONTROL, encodeControl(command));
    const told = stepCore(written.core, atMs, { kind: "time" });
    core = told.core;
    return [...ticked.notifications, ...told.notifications];
  });
  const states = sent
    .filter(({ address }) => address === STATUS)
    .map(({ bytes }) => decodeStatus(bytes))
    .map((status) => (status.ok ? status.value.state : status.error.kind));
  return {
    core,
    sent,
    states,
    frames: sent.filter(({ address }) => address === SWEEP).map(({ bytes }) => bytes),
  };
}
const on: CoreEvent = { kind: "heatersOn" };
const time: CoreEvent = { kind: "time" };
const sweep = (startedAtMs: number, ohm: readonly (number | null)[] = [1, 2, 3]): CoreEvent => ({
  kind: "sweep",
  startedAtMs,
  ohm,
});

describe("the states", () => {
  it("go from cold over warming to ready, by themselves", () => {
    const { states } = played([
      [0, time],
      [1, on],
      [5000, time],
      [WARM_UP_MS, time],
      [WARM_UP_MS + 1, time],
    ]);
    expect(states).toEqual(["cold", "warming", "warming", "warming", "ready"]);
  });

  it("leave a fault by way of cold, and warm up anew", () => {
    const { states, core } = played([
      [0, on],
      [20_000, "start"],
      [21_000, { kind: "sensorLost" }],
      [30_000, { kind: "sensorBack" }],
      [30_500, on],
    ]);
    expect(states).toEqual(["warming", "ready", "measuring", "fault", "cold", "warming"]);
    expect(statusOf(core).warmUpLeftMs).toBe(WARM_UP_MS);
  });

  it("do not heat what cannot be measured", () => {
    const { core, states } = played([
      [0, { kind: "sensorLost" }],
      [1, on],
      [2, { kind: "sensorBack" }],
    ]);
    expect(states).toEqual(["fault", "cold"]);
    expect(core.heatersOnAtMs).toBeNull();
  });

  it("show a heater that cannot be set as a fault with its flag", () => {
    const { core } = played([
      [0, on],
      [20_000, { kind: "heaterFault", on: true }],
    ]);
    expect(statusOf(core)).toMatchObject({ state: "fault", heaterFault: true });
  });

  it("end a purge at its time, or on stop", () => {
    expect(
      played([
        [0, on],
        [20_000, "purge"],
        [24_999, time],
        [25_000, time],
      ]).states.slice(2),
    ).toEqual(["purging", "ready"]);
    expect(
      played([
        [0, on],
        [20_000, "purge"],
        [21_000, "stop"],
      ]).states.slice(2),
    ).toEqual(["purging", "ready"]);
  });

  it("count the hours that the sensors were heated, in this life and before", () => {
    const before = createCore({ ...setup(), heatedBeforeMs: 3_600_000 * 1.5 });
    const { core } = played(
      [
        [0, on],
        [1_000_000, { kind: "heatersOff" }],
        [5_000_000, on],
        [6_000_000, time],
      ],
      before,
    );
    expect(heatedSoFarMs(core)).toBe(5_400_000 + 2_000_000); // counted by hand
    expect(statusOf(core).burnInHours).toBe(2); // 7 400 000 ms are 2.06 h
  });

  it("never let time run backwards", () => {
    const { core } = played([
      [0, on],
      [20_000, time],
      [10_000, time],
    ]);
    expect(statusOf(core).deviceTimeMs).toBe(20_000);
  });
});

describe("sweeps", () => {
  it("that began before the start command belong to no run", () => {
    const { frames } = played([
      [0, on],
      [20_500, "start"],
      [21_000, sweep(20_000)],
      [22_000, sweep(21_000)],
    ]);
    const assembly = frames.map((frame) => assembleSweeps(beginSweeps(9, 3), frame));
    expect(frames).toHaveLength(2); // one sweep of three channels
    expect(assembly.every(({ faults }) => faults.length === 0)).toBe(true);
  });

  it("are sent to nobody unless measuring", () => {
    expect(
      played([
        [0, on],
        [20_000, sweep(19_000)],
        [20_500, "start"],
        [20_600, "stop"],
        [22_000, sweep(21_000)],
      ]).frames,
    ).toEqual([]);
  });

  it("of another width are our own mistake", () => {
    expect(() => stepCore(createCore(setup()), 0, sweep(0, [1, 2]))).toThrow(RangeError);
  });

  it.each([0, -1, Number.POSITIVE_INFINITY, Number.NaN, 1e39, 1e-46])(
    "with %s ohm in them are not measured there",
    (ohm) => {
      const { frames } = played([
        [0, on],
        [20_000, "start"],
        [21_000, sweep(20_000, [5, ohm, 7])],
      ]);
      const steps = [];
      let state = beginSweeps(9, 3);
      for (const frame of frames) {
        const step = assembleSweeps(state, frame);
        state = step.state;
        steps.push(step);
      }
      steps.push(finishSweeps(state));
      expect(steps.flatMap(({ faults }) => faults)).toEqual([
        { kind: "notMeasured", counter: 0, channels: [1] },
      ]);
    },
  );

  it("arrive at the phone as they were, over the wrap of the sequence number, in any number and width", () => {
    const ohm = fc.float({ min: Math.fround(1), max: Math.fround(1e9), noNaN: true });
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 64 })
          .chain((width) =>
            fc.array(fc.array(ohm, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 4 }),
          ),
        (rows) => {
          const width = rows[0]!.length;
          const { frames } = played(
            [
              [0, on],
              [20_000, "start"],
              ...rows.map((row, i) => [21_000 + 1000 * i, sweep(20_000 + 1000 * i, row)] as const),
            ],
            createCore(setup(width)),
          );
          let state = beginSweeps(9, width);
          const steps = frames.map((frame) => {
            const step = assembleSweeps(state, frame);
            state = step.state;
            return step;
          });
          steps.push(finishSweeps(state));
          expect(frames.every((frame) => frame.length <= 20)).toBe(true); // the default ATT_MTU's notification
          expect(steps.flatMap(({ faults }) => faults)).toEqual([]);
          expect(steps.flatMap(({ sweeps }) => sweeps.map((one) => [one.atMs, one.ohm]))).toEqual(
            rows.map((row, i) => [20_000 + 1000 * i, row]),
          );
        },
      ),
    );
  });
});

describe("whatever happens", () => {
  const events: fc.Arbitrary<CoreEvent | "start" | "stop" | "purge"> = fc.oneof(
    fc.constantFrom("start" as const, "stop" as const, "purge" as const),
    fc.constantFrom<CoreEvent>(
      on,
      time,
      { kind: "heatersOff" },
      { kind: "heaterFault", on: true },
      { kind: "heaterFault", on: false },
      { kind: "sensorLost" },
      { kind: "sensorBack" },
      { kind: "nothingMoreToPlay" },
      { kind: "air", reading: { temperatureC: 20 } },
    ),
  );
  /** PROFILE.md section 5, table of states: what may follow what; a fault may come at any time. */
  const next: Record<string, readonly string[]> = {
    cold: ["warming"],
    warming: ["warming", "ready", "measuring", "cold"],
    ready: ["measuring", "purging", "cold"],
    measuring: ["ready", "warming", "purging", "measuring", "cold"],
    purging: ["ready", "warming", "cold"],
    fault: ["cold"],
  };

  it("subscribers see only the profile's transitions, and the last word agrees with a read", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 6000 }), events), { maxLength: 60 }),
        (steps) => {
          let atMs = 0;
          const timed = steps.map(([waitMs, event]) => [(atMs += waitMs), event] as const);
          const { states, core } = played([[0, time], ...timed]);
          states.slice(1).forEach((state, i) => {
            const before = states[i]!;
            expect([before, "fault", ...(next[before] ?? [])]).toContain(state);
          });
          expect(states.at(-1)).toBe(statusOf(core).state);
        },
      ),
    );
  });
});

describe("reads", () => {
  const core = createCore(setup());
  it("find what is there and nothing else", () => {
    const there = addressesOf(core.setup.senses);
    expect(there).toHaveLength(8); // four of the sniffer's own, two of the air, two texts: counted by hand
    expect(readValue(core, SWEEP)).toEqual({ ok: false, error: "refused" });
    expect(readValue(core, { ...LAYOUT, characteristic: "x" })).toEqual({ ok: false, error: "absent" });
    expect(writeValue(core, LAYOUT, new Uint8Array()).attError).toBe(0x03);
    expect(writeValue(core, { ...LAYOUT, characteristic: "x" }, new Uint8Array()).attError).toBe(0x0a);
  });
});

describe("who is there", () => {
  const story = (...events: readonly (readonly [number, PresenceEvent])[]) =>
    events.reduce((presence, [atMs, event]) => stepPresence(presence, atMs, event), NOBODY);
  const asked = (device: string | null): PresenceEvent => ({ kind: "asked", device });

  it("nobody, until somebody asks or listens", () => {
    expect(isAbandoned(NOBODY, 60_000)).toBe(true);
    expect(story([5, asked("a")]).aloneSinceMs).toBeNull();
    expect(story([5, { kind: "listening", on: true }]).aloneSinceMs).toBeNull();
    expect(story([5, asked(null)]).aloneSinceMs).toBe(0);
  });

  it("the last one to leave starts the clock, another device's leaving does not", () => {
    const left = story(
      [1, asked("a")],
      [2, asked("b")],
      [10, { kind: "disconnected", device: "a" }],
      [20, { kind: "disconnected", device: "b" }],
    );
    expect(left.aloneSinceMs).toBe(20);
    expect(
      story([1, asked("a")], [9, { kind: "disconnected", device: "headphones" }]).aloneSinceMs,
    ).toBeNull();
    expect(isAbandoned(left, 20 + 59_999)).toBe(false);
    expect(isAbandoned(left, 20 + 60_000)).toBe(true);
  });

  it("a bonded phone that left stays in BlueZ's books as a subscriber, and is not there all the same", () => {
    const left = story(
      [1, asked("a")],
      [2, { kind: "listening", on: true }],
      [30, { kind: "disconnected", device: "a" }],
    );
    expect(left.aloneSinceMs).toBe(30);
  });

  it("with the adapter everybody is gone", () => {
    const gone = story(
      [1, asked("a")],
      [2, { kind: "listening", on: true }],
      [30, { kind: "adapterGone" }],
      [40, { kind: "adapterGone" }],
    );
    expect(gone.aloneSinceMs).toBe(30);
  });
});
