import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import { CONTROL_ATT_ERRORS, encodeControl } from "../../src/profile/control.js";
import { decodeHumidity } from "../../src/profile/environment.js";
import { CONTROL, HUMIDITY } from "../../src/profile/uuids.js";
import { NIGHT_MARKET, plateOf } from "../../src/virtual/dishes.js";
import type { Faults } from "../../src/virtual/faults.js";
import {
  advance,
  createVirtualSniffer,
  serve,
  writeValue,
  type VirtualSnifferOptions,
} from "../../src/virtual/virtualSniffer.js";
import { assembled, bytesOf, framesIn, started, statusIn, sweepsIn } from "./listening.js";

const plate = plateOf(NIGHT_MARKET[2]!, seededRandom(1));
const warm = (faults: Partial<Faults>, rest: Partial<VirtualSnifferOptions> = {}) =>
  createVirtualSniffer({ seed: 8, uptimeMs: 600_000, faults, ...rest });
const run = (faults: Partial<Faults>, ms: number, rest: Partial<VirtualSnifferOptions> = {}) =>
  advance(serve(started(warm(faults, rest), 1), plate), ms);

describe("a bad radio", () => {
  it("loses the stated share of notifications, and the assembler names every one in between", () => {
    const { notifications } = run({ lostFraction: 0.1 }, 400_000);
    const frames = framesIn(notifications).length;
    // 200 sweeps of 4 frames; binomial with 800 trials: standard error 8.5, so 720 within 4 of them.
    expect(Math.abs(frames - 720)).toBeLessThan(34);
    const { faults } = assembled(notifications, 1);
    const lost = faults.reduce((sum, it) => sum + (it.kind === "framesLost" ? it.count : 0), 0);
    // Frames after the last one that came cannot be missed: at most a sweep's worth.
    expect(800 - frames - lost).toBeLessThan(4);
    expect(lost).toBeGreaterThan(0);
  });

  it("garbles the stated share, and the check value catches each", () => {
    const { notifications } = run({ garbledFraction: 0.1 }, 400_000);
    const { sweeps, faults } = assembled(notifications, 1);
    const garbled = faults.filter((it) => it.kind === "corruptFrame").length;
    expect(Math.abs(garbled - 80)).toBeLessThan(34);
    const intact = sweepsIn(run({}, 400_000).notifications, 1);
    for (const sweep of sweeps) expect(sweep).toEqual(intact[sweep.counter]); // nothing wrong gets through
  });
});

describe("a bad sensor", () => {
  it("sticks at one value while the other channels answer", () => {
    const sweeps = sweepsIn(run({ stuckChannel: { channel: 3, ohm: 33_000 } }, 60_000).notifications, 1);
    expect(sweeps.every((sweep) => sweep.ohm[3] === 33_000)).toBe(true);
    expect(sweeps.at(-1)!.ohm[2]).toBeLessThan(sweeps[0]!.ohm[2]! * 0.9);
  });

  it("says so where a channel cannot be measured", () => {
    const { sweeps, faults } = assembled(
      run({ stuckChannel: { channel: 3, ohm: null } }, 6000).notifications,
      1,
    );
    expect(sweeps).toHaveLength(0);
    expect(faults).toEqual([0, 1, 2].map((counter) => ({ kind: "notMeasured", counter, channels: [3] })));
  });

  it("stops with a heater fault, and starts no more", () => {
    const { sniffer, notifications } = run({ heaterFailsAtMs: 5000 }, 10_000);
    expect(sweepsIn(notifications, 1)).toHaveLength(2);
    expect(statusIn(notifications).at(-1)).toMatchObject({ state: "fault", heaterFault: true, run: 1 });
    const answer = writeValue(sniffer, CONTROL, encodeControl({ kind: "start", run: 2 }));
    expect(answer.attError).toBe(CONTROL_ATT_ERRORS.notReady);
  });

  it("answers less when poisoned: after 60 days at 2 % a day, clearly", () => {
    const answer = (faults: Partial<Faults>) => {
      const inAir = advance(started(warm(faults, { ageDays: 60 }), 1), 10_000);
      const over = advance(serve(inAir.sniffer, plate), 80_000);
      const sweeps = sweepsIn([...inAir.notifications, ...over.notifications], 1);
      return Math.log(sweeps[4]!.ohm[2]! / sweeps.at(-1)!.ohm[2]!);
    };
    expect(answer({ sensitivityLossPerDay: 0.02 })).toBeLessThan(0.75 * answer({}));
  });

  it("drifts with the days, the same unit along the same path", () => {
    const firstOhm = (ageDays: number, unitSeed: number) =>
      sweepsIn(run({}, 2000, { ageDays, unitSeed }).notifications, 1)[0]!.ohm[0]!;
    expect(firstOhm(90, 1)).toBe(firstOhm(90, 1));
    expect(Math.abs(Math.log(firstOhm(90, 1) / firstOhm(0, 1)))).toBeGreaterThan(0.01);
    expect(firstOhm(90, 1)).not.toBe(firstOhm(90, 2));
    expect(firstOhm(0, 1)).toBe(firstOhm(0, 2)); // no days, no drift
  });
});

describe("a wet headspace", () => {
  it("drives the case to 100 %, which an ordinary plate does not", () => {
    const humidest = (faults: Partial<Faults>) =>
      Math.max(
        ...bytesOf(run(faults, 90_000).notifications, HUMIDITY).map((bytes) => {
          const decoded = decodeHumidity(bytes);
          return decoded.ok ? (decoded.value ?? 0) : 0;
        }),
      );
    expect(humidest({ steamFactor: 12 })).toBe(100);
    expect(humidest({})).toBeLessThan(90);
  });
});

describe("a lost moment of power", () => {
  const { notifications, sniffer } = run({ rebootAtMs: 5100 }, 30_000);

  it("ends the run: no more sweeps, device time and run begin anew", () => {
    expect(sweepsIn(notifications.slice(0, 30), 1).length).toBeLessThanOrEqual(2);
    const told = statusIn(notifications);
    const anew = told.find((status) => status.state === "warming");
    expect(anew).toMatchObject({ run: 0 });
    expect(anew!.deviceTimeMs).toBeLessThan(1000);
    expect(told.at(-1)!.deviceTimeMs).toBeLessThan(25_000);
    expect(framesIn(notifications)).toHaveLength(8); // two whole sweeps before 5.1 s, by hand
  });

  it("happens once, even when the time is cut right before it", () => {
    const before = advance(serve(started(warm({ rebootAtMs: 5100 }), 1), plate), 5099);
    const after = advance(before.sniffer, 24_901);
    expect(after.sniffer).toEqual(sniffer);
  });

  it("can be started again, right after it as well", () => {
    const again = advance(started(sniffer, 2), 4000);
    expect(sweepsIn(again.notifications, 2).map((sweep) => sweep.counter)).toEqual([0, 1]);
    const atOnce = advance(started(warm({ rebootAtMs: 5100 }), 1), 5251).sniffer;
    expect(sweepsIn(advance(started(atOnce, 2), 4249).notifications, 2)).toHaveLength(2);
  });
});
