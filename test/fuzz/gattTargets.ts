/** Bytes off the air: whatever comes, a value that says exactly what the bytes say, or an error; never a crash. */
import assert from "node:assert/strict";
import type { RandomSource } from "../../src/kernel/random.js";
import type { Result } from "../../src/kernel/result.js";
import {
  assembleSweeps,
  beginSweeps,
  finishSweeps,
  type AssemblyStep,
} from "../../src/profile/assembleSweeps.js";
import { decodeBatteryLevel, encodeBatteryLevel } from "../../src/profile/battery.js";
import { decodeControl, encodeControl } from "../../src/profile/control.js";
import { withCrc } from "../../src/profile/crc16.js";
import { decodeText, encodeText } from "../../src/profile/deviceInformation.js";
import {
  decodeHumidity,
  decodePressure,
  decodeTemperature,
  encodeHumidity,
  encodePressure,
  encodeTemperature,
} from "../../src/profile/environment.js";
import { decodeLayout, encodeLayout, PROFILE_VERSION, type SnifferLayout } from "../../src/profile/layout.js";
import { decodeStatus, encodeStatus } from "../../src/profile/status.js";
import { decodeSweepFrame, encodeSweep, framesPerSweep, type Sweep } from "../../src/profile/sweepFrame.js";
import { below, mutateBytes, pick, randomBytes } from "./mutate.js";
import type { FuzzTarget } from "./runTarget.js";

/** A decoder whose every accepted value, encoded again, is what was on the air. `known` cuts what a decoder may pass over. */
function codec<T>(
  name: string,
  valid: (random: RandomSource) => Uint8Array,
  decode: (bytes: Uint8Array) => Result<T, unknown>,
  encode: (value: T) => Uint8Array,
  known: (bytes: Uint8Array) => Uint8Array = (bytes) => bytes,
): FuzzTarget {
  return {
    name,
    run: (random) => {
      const sound = valid(random);
      const bytes = pick(random, [sound, mutateBytes(random, sound), randomBytes(random, below(random, 24))]);
      const before = Uint8Array.from(bytes);
      const decoded = decode(bytes);
      assert.deepEqual(bytes, before, "the bytes were written to");
      if (bytes === sound) assert.ok(decoded.ok, "a sound value was refused");
      if (decoded.ok)
        assert.deepEqual(encode(decoded.value), known(bytes), "says something else than the bytes");
      return decoded.ok;
    },
  };
}

const uint32 = (random: RandomSource) => below(random, 2 ** 32);

function anyLayout(random: RandomSource): SnifferLayout {
  return {
    profileVersion: PROFILE_VERSION,
    snifferId: `5e0d1e00000000${(16 + below(random, 200)).toString(16)}`,
    sweepPeriodMs: 1 + below(random, 60_000),
    warmUpMs: uint32(random),
    channels: Array.from({ length: 1 + below(random, 12) }, (_, sensor) => ({
      sensor,
      heaterC: pick(random, [null, -273, 0, 200, 32_767]),
      dwellMs: pick(random, [null, 0, 500, 65_534]),
    })),
  };
}

/** Changed octets under a check that holds: what a firmware with a fault, or an ill-meant one, would send. */
const resigned = (random: RandomSource, bytes: Uint8Array) =>
  withCrc(mutateBytes(random, bytes.subarray(0, -2)));

const layout: FuzzTarget = {
  name: "layout",
  run: (random) => {
    const sound = encodeLayout(anyLayout(random));
    const bytes = pick(random, [sound, mutateBytes(random, sound), resigned(random, sound)]);
    const decoded = decodeLayout(bytes);
    if (bytes === sound) assert.ok(decoded.ok, "a sound layout was refused");
    if (!decoded.ok) return false;
    const again = decodeLayout(encodeLayout(decoded.value));
    assert.deepEqual(again, decoded, "does not come back as it was");
    if (decoded.value.profileVersion.minor <= PROFILE_VERSION.minor)
      assert.deepEqual(encodeLayout(decoded.value), bytes, "says something else than the bytes");
    return true;
  },
};

const anySweep = (random: RandomSource, counter: number, channelCount: number, run: number): Sweep => ({
  run,
  counter,
  atMs: 5000 + counter * 1000,
  ohm: Array.from({ length: channelCount }, () => Math.fround(1 + random() * 1e6)),
});

/** Up to three flipped bits: the check must notice. @see src/profile/crc16.ts */
function flipBits(random: RandomSource, bytes: Uint8Array): Uint8Array {
  const copy = Uint8Array.from(bytes);
  const places = new Set(Array.from({ length: 1 + below(random, 3) }, () => below(random, copy.length * 8)));
  for (const place of places) copy[place >> 3] = (copy[place >> 3] ?? 0) ^ (1 << (place & 7));
  return copy;
}

const sweepFrame: FuzzTarget = {
  name: "sweep frame",
  run: (random) => {
    const frames = encodeSweep(
      anySweep(random, below(random, 70_000), 1 + below(random, 64), 7),
      below(random, 65_536),
    );
    const sound = pick(random, frames);
    assert.ok(decodeSweepFrame(sound).ok, "a sound frame was refused");
    assert.ok(!decodeSweepFrame(flipBits(random, sound)).ok, "up to three flipped bits went unnoticed");
    const decoded = decodeSweepFrame(
      pick(random, [resigned(random, sound), randomBytes(random, below(random, 24))]),
    );
    if (!decoded.ok) return false;
    const { ohm, firstChannel, run } = decoded.value;
    assert.ok(
      ohm.every((value) => value === null || (value > 0 && Number.isFinite(value))),
      "no resistance",
    );
    assert.ok(run >= 1 && firstChannel + ohm.length <= 64, "no such run or channel");
    return true;
  },
};

/** Everything that comes of a row of notifications, the end of the run included. */
function assemble(run: number, channelCount: number, notifications: readonly Uint8Array[]): AssemblyStep {
  let step: AssemblyStep = { state: beginSweeps(run, channelCount), sweeps: [], faults: [] };
  const take = (next: AssemblyStep) => {
    step = { ...next, sweeps: [...step.sweeps, ...next.sweeps], faults: [...step.faults, ...next.faults] };
  };
  for (const bytes of notifications) take(assembleSweeps(step.state, bytes));
  take(finishSweeps(step.state));
  return step;
}

/** What a bad radio does: drops, doubles, swaps neighbours, garbles. What comes out was sent, and what did not is named. */
const lossyRun: FuzzTarget = {
  name: "sweeps over a bad radio",
  run: (random) => {
    const channelCount = 1 + below(random, 9);
    const run = 1 + below(random, 255);
    const firstSequence = below(random, 65_536);
    const perSweep = framesPerSweep(channelCount);
    const sent = Array.from({ length: 1 + below(random, 12) }, (_, i) =>
      anySweep(random, i, channelCount, run),
    );
    const frames = sent.flatMap((sweep, i) => encodeSweep(sweep, (firstSequence + i * perSweep) % 65_536));
    const heard: Uint8Array[] = [];
    for (const frame of frames) {
      const fate = random();
      if (fate < 0.05) continue;
      else if (fate < 0.1) heard.push(frame, frame);
      else if (fate < 0.15) heard.splice(Math.max(0, heard.length - 1 - below(random, 3)), 0, frame);
      else if (fate < 0.2) heard.push(flipBits(random, frame));
      else if (fate < 0.22) heard.push(randomBytes(random, below(random, 24)), frame);
      else heard.push(frame);
    }
    const { sweeps, faults } = assemble(run, channelCount, heard);
    assert.ok(!faults.some(({ kind }) => kind === "restarted"), "took a bad radio for a restart");
    for (const sweep of sweeps) assert.deepEqual(sweep, sent[sweep.counter], "a sweep that was not sent");
    const lost = faults.flatMap((fault) =>
      fault.kind === "sweepsLost"
        ? Array.from({ length: fault.count }, (_, i) => fault.firstCounter + i)
        : [],
    );
    const accounted = [...sweeps.map(({ counter }) => counter), ...lost].sort((a, b) => a - b);
    // Each once, from the first on; what was lost after the last frame heard nobody can know.
    assert.deepEqual(
      accounted,
      Array.from(accounted, (_, i) => i),
      "lost or delivered twice without a word",
    );
    return sweeps.length > 0;
  },
};

/** Frames that pass the check and say anything at all. */
const hostileRun: FuzzTarget = {
  name: "sweeps from a hostile sniffer",
  run: (random) => {
    const channelCount = 1 + below(random, 6);
    const heard: Uint8Array[] = [];
    for (let left = below(random, 40); left > 0; left -= 1) {
      const counter = pick(random, [0, 1, 2, 3, 65_534, 65_535, below(random, 65_536)]);
      const frames = encodeSweep(
        { ...anySweep(random, counter, channelCount, 9), atMs: uint32(random) },
        pick(random, [0, 65_535, below(random, 65_536)]),
      );
      const frame = pick(random, frames);
      heard.push(pick(random, [frame, frame, resigned(random, frame), mutateBytes(random, frame)]));
    }
    const { sweeps, faults } = assemble(9, channelCount, heard);
    for (const { ohm } of sweeps) {
      assert.equal(ohm.length, channelCount, "a sweep of another width");
      assert.ok(
        ohm.every((value) => value > 0 && Number.isFinite(value)),
        "no resistance",
      );
    }
    assert.ok(faults.length <= 8 * (heard.length + 1), "more faults than frames could have");
    return sweeps.length > 0;
  },
};

export const gattTargets: readonly FuzzTarget[] = [
  codec(
    "temperature",
    (random) => encodeTemperature(pick(random, [null, -273.15, 327.67, 21.5])),
    decodeTemperature,
    encodeTemperature,
  ),
  codec(
    "humidity",
    (random) => encodeHumidity(pick(random, [null, 0, 100, 41.07])),
    decodeHumidity,
    encodeHumidity,
  ),
  codec("pressure", (random) => encodePressure(uint32(random) / 10), decodePressure, encodePressure),
  codec(
    "battery",
    (random) => encodeBatteryLevel(below(random, 101)),
    decodeBatteryLevel,
    encodeBatteryLevel,
  ),
  codec(
    "text",
    (random) => encodeText(pick(random, ["", "1.4.2", "Straße 7", "鼻 🍲"])),
    decodeText,
    encodeText,
  ),
  codec(
    "control",
    (random) =>
      encodeControl(
        pick(random, [{ kind: "stop" }, { kind: "purge" }, { kind: "start", run: 255 }] as const),
      ),
    decodeControl,
    encodeControl,
  ),
  codec(
    "status",
    (random) =>
      encodeStatus({
        state: pick(random, ["cold", "measuring", "fault"] as const),
        heaterFault: below(random, 2) === 0,
        run: below(random, 256),
        warmUpLeftMs: uint32(random),
        deviceTimeMs: uint32(random),
        burnInHours: below(random, 65_536),
      }),
    decodeStatus,
    encodeStatus,
    // Unknown flags and further octets are a newer version's: passed over.
    (bytes) => Uint8Array.from(bytes.subarray(0, 13), (octet, i) => (i === 1 ? octet & 1 : octet)),
  ),
  layout,
  sweepFrame,
  lossyRun,
  hostileRun,
];
