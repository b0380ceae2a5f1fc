/** The sweeps of one step: reads the channels whose turn has come, and sends a sweep when it is whole. */
import type { Notification } from "./notification.js";
import { standardNormal, type RandomSource } from "../kernel/random.js";
import { encodeSweep, framesPerSweep, SEQUENCE_MODULUS } from "../profile/sweepFrame.js";
import { SWEEP } from "../profile/uuids.js";
import { channelResistance, filmOf } from "./channelResistance.js";
import { WHITE_SD } from "./noise.js";
import { sinceBootMs, type Activity, type VirtualSniffer } from "./snifferState.js";
import { readTimesMs } from "./sweepTiming.js";
import { warmUpOffset } from "./warmUp.js";

type Measuring = Extract<Activity, { kind: "measuring" }>;

export interface Measured {
  readonly sniffer: VirtualSniffer;
  readonly notifications: readonly Notification[];
}

/** An unheated channel reads as its film would at this temperature, in degrees Celsius. */
const UNHEATED_C = 150;

/** Reads and sends what is due at `sniffer.elapsedMs`. Does nothing unless it is measuring. */
export function measure(sniffer: VirtualSniffer, random: RandomSource): Measured {
  const notifications: Notification[] = [];
  let now = sniffer;
  while (now.activity.kind === "measuring") {
    const read = readDue(now, now.activity, random);
    now = { ...now, activity: read };
    if (read.ohm.includes(null)) break;
    notifications.push(...sweepNotifications(now, read));
    now = withNextSweep(now, read);
  }
  return { sniffer: now, notifications };
}

function readDue(sniffer: VirtualSniffer, sweep: Measuring, random: RandomSource): Measuring {
  const times = readTimesMs(sniffer.setup.layout);
  const sinceStart = sniffer.elapsedMs - sweep.sweepStartMs;
  const ohm = sweep.ohm.map((known, channel) =>
    known === null && times[channel]! <= sinceStart ? readChannel(sniffer, channel, random) : known,
  );
  return { ...sweep, ohm };
}

/** In ohm; NaN stands for "not measured". */
function readChannel(sniffer: VirtualSniffer, channel: number, random: RandomSource): number {
  const { setup, air, age, noise } = sniffer;
  const { sensor, heaterC } = setup.layout.channels[channel]!;
  const film = filmOf(sensor);
  const white = WHITE_SD * standardNormal(random);
  const { stuckChannel } = setup.faults;
  if (stuckChannel?.channel === channel) return stuckChannel.ohm ?? Number.NaN;
  const surface = {
    ppm: air.ppm,
    absoluteHumidityGm3: air.absoluteHumidityGm3,
    ambientC: air.caseC,
  };
  const ohm = channelResistance(sensor, heaterC ?? UNHEATED_C, surface, setup.unit, age);
  const warming = warmUpOffset(film, sinceBootMs(sniffer), setup.layout.warmUpMs);
  return ohm * Math.exp(warming + noise.slow[film] + noise.fast[channel]! + white);
}

function sweepNotifications(sniffer: VirtualSniffer, sweep: Measuring): Notification[] {
  const atMs = Math.max(0, Math.floor(sweep.sweepStartMs - sniffer.bootedAtMs));
  const ohm = sweep.ohm.map((value) => value ?? Number.NaN);
  return encodeSweep({ run: sniffer.run, counter: sweep.counter, atMs, ohm }, sniffer.nextSequence).map(
    (bytes) => ({ address: SWEEP, bytes }),
  );
}

function withNextSweep(sniffer: VirtualSniffer, sweep: Measuring): VirtualSniffer {
  const { channels, sweepPeriodMs } = sniffer.setup.layout;
  return {
    ...sniffer,
    nextSequence: (sniffer.nextSequence + framesPerSweep(channels.length)) % SEQUENCE_MODULUS,
    activity: {
      kind: "measuring",
      counter: sweep.counter + 1,
      sweepStartMs: sweep.sweepStartMs + sweepPeriodMs,
      ohm: channels.map(() => null),
    },
  };
}
