/** Sweeps round and round, so that the films always live through the same steps, measuring or not. */
import { err, ok, type Result } from "../kernel/result.js";
import type { IioReader } from "./iioReader.js";
import type { Clock } from "./peripheral.js";
import { sweepPlan } from "./sweepPlan.js";

export interface LoopSweep {
  readonly startedAtMs: number;
  /** In ohm; null where a channel could not be measured. */
  readonly ohm: readonly (number | null)[];
}

/** Why sweeping ended. */
export type LoopEnd =
  | "stopped" // it was asked to
  | "heater" // a heater could not be set
  | "sensor"; // nothing can be read

export interface SweepLoop {
  readonly reader: IioReader;
  readonly clock: Clock;
  readonly signal: AbortSignal;
  /** Between two sweeps: anything else there is to read, and purging. Time it takes delays the next sweep. */
  readonly between: () => Promise<LoopEnd | null>;
  readonly onSweep: (sweep: LoopSweep) => void;
}

/** So many sweeps in a row without a single resistance: the sensor is gone, or its wire is off. */
export const EMPTY_SWEEPS = 5;

/** Runs until stopped, or until it cannot go on. */
export async function sweepUntilEnd(loop: SweepLoop): Promise<LoopEnd> {
  const { clock, signal, reader } = loop;
  let empty = 0;
  let startMs = clock.nowMs();
  while (!signal.aborted) {
    const ended = await loop.between();
    if (ended !== null) return ended;
    startMs = Math.max(startMs, clock.nowMs());
    const sweep = await oneSweep(loop, startMs);
    if (!sweep.ok) return sweep.error;
    loop.onSweep({ startedAtMs: startMs, ohm: sweep.value });
    empty = sweep.value.some((value) => value !== null) ? 0 : empty + 1;
    if (empty >= EMPTY_SWEEPS) return "sensor";
    startMs += reader.table.sweepPeriodMs;
    await clock.wait(startMs - clock.nowMs(), signal);
  }
  return "stopped";
}

async function oneSweep(loop: SweepLoop, startMs: number): Promise<Result<(number | null)[], LoopEnd>> {
  const { reader, clock, signal } = loop;
  const ohm: (number | null)[] = reader.table.channels.map(() => null);
  for (const step of sweepPlan(reader.table)) {
    await clock.wait(startMs + step.atMs - clock.nowMs(), signal);
    if (signal.aborted) return err("stopped");
    const set = await reader.set(step.writes);
    if (!set.ok) return err(["gone", "absent"].includes(set.error.kind) ? "sensor" : "heater");
    for (const place of step.reads) {
      const read = await reader.readChannel(place);
      if (!read.ok) return err("sensor");
      ohm[place] = read.value;
    }
  }
  return ok(ohm);
}
