/** When in a sweep which heater is set and which channel is read. */
import { PROFILE_VERSION, type SnifferLayout } from "../profile/layout.js";
import { readTimesMs } from "../virtual/sweepTiming.js";
import type { AttributeWrite, ChannelTable } from "./channelTable.js";

/** One moment of a sweep: what to set, and then what to read. */
export interface PlanStep {
  /** From the start of the sweep, in milliseconds. */
  readonly atMs: number;
  readonly writes: readonly AttributeWrite[];
  /** Places in the channel table. */
  readonly reads: readonly number[];
}

/**
 * Sensors step side by side; of one sensor each step is read at its end, before its heater goes on to the next.
 *
 * @returns steps in time order; at one moment a sensor is read before its heater is set anew
 */
export function sweepPlan(table: ChannelTable): PlanStep[] {
  const readAtMs = readTimesMs(layoutOf(table, ""));
  const begunMs = new Map<number, number>();
  const steps = table.channels.flatMap(({ sensor, heater }, place): PlanStep[] => {
    const startMs = begunMs.get(sensor) ?? 0;
    const endMs = readAtMs[place] ?? startMs;
    begunMs.set(sensor, endMs);
    return [
      ...(heater.length > 0 ? [{ atMs: startMs, writes: heater, reads: [] }] : []),
      { atMs: endMs, writes: [], reads: [place] },
    ];
  });
  return steps.sort((left, right) => left.atMs - right.atMs);
}

/** What LAYOUT says of a table. */
export function layoutOf(table: ChannelTable, snifferId: string): SnifferLayout {
  return {
    profileVersion: PROFILE_VERSION,
    snifferId,
    sweepPeriodMs: table.sweepPeriodMs,
    warmUpMs: table.warmUpMs,
    channels: table.channels.map(({ sensor, heaterC, dwellMs }) => ({ sensor, heaterC, dwellMs })),
  };
}
