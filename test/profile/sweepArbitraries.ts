/** Random sweeps and what a radio may do to their frames. */
import fc from "fast-check";
import {
  assembleSweeps,
  beginSweeps,
  finishSweeps,
  type LinkFault,
  type SweepAssembly,
} from "../../src/profile/assembleSweeps.js";
import { encodeSweep, framesPerSweep, type Sweep } from "../../src/profile/sweepFrame.js";

export interface Run {
  readonly run: number;
  readonly channelCount: number;
  readonly firstSequence: number;
  readonly sweeps: readonly Sweep[];
}

/** Positive, finite, and exact as 32-bit floats. */
export const ohm = fc.float({ min: Math.fround(1e-3), max: Math.fround(1e12), noNaN: true });

/** A run from its first sweep: any start of the sequence and of the clock, wraps included. */
export const runs = fc
  .record({
    run: fc.integer({ min: 1, max: 255 }),
    channelCount: fc.integer({ min: 1, max: 9 }),
    firstSequence: fc.oneof(fc.integer({ min: 0, max: 0xffff }), fc.integer({ min: 0xffc0, max: 0xffff })),
    startMs: fc.oneof(
      fc.integer({ min: 0, max: 0xffffffff }),
      fc.integer({ min: 0xfffff000, max: 0xffffffff }),
    ),
    periodMs: fc.integer({ min: 1, max: 5000 }),
    sweepCount: fc.integer({ min: 1, max: 20 }),
  })
  .chain(({ run, channelCount, firstSequence, startMs, periodMs, sweepCount }) =>
    fc
      .array(fc.array(ohm, { minLength: channelCount, maxLength: channelCount }), {
        minLength: sweepCount,
        maxLength: sweepCount,
      })
      .map((rows): Run => ({
        run,
        channelCount,
        firstSequence,
        sweeps: rows.map((row, counter) => ({ run, counter, atMs: startMs + counter * periodMs, ohm: row })),
      })),
  );

/** All frames of a run, in order. */
export function framesOf({ sweeps, channelCount, firstSequence }: Run): Uint8Array[] {
  const perSweep = framesPerSweep(channelCount);
  return sweeps.flatMap((sweep, i) => encodeSweep(sweep, (firstSequence + i * perSweep) % 0x10000));
}

/** Everything that comes of a row of notifications, the end of the run included. */
export function assembleAll(
  { run, channelCount }: Pick<Run, "run" | "channelCount">,
  notifications: readonly Uint8Array[],
): { sweeps: Sweep[]; faults: LinkFault[]; state: SweepAssembly } {
  let state = beginSweeps(run, channelCount);
  const sweeps: Sweep[] = [];
  const faults: LinkFault[] = [];
  const take = (step: ReturnType<typeof finishSweeps>): void => {
    state = step.state;
    sweeps.push(...step.sweeps);
    faults.push(...step.faults);
  };
  for (const bytes of notifications) take(assembleSweeps(state, bytes));
  take(finishSweeps(state));
  return { sweeps, faults, state };
}

/** Sum of what the faults of one kind count. */
export function countOf(faults: readonly LinkFault[], kind: "framesLost" | "sweepsLost"): number {
  return faults.reduce((sum, fault) => sum + (fault.kind === kind ? fault.count : 0), 0);
}

/** The counters that the faults name as lost. */
export function lostCounters(faults: readonly LinkFault[]): number[] {
  return faults.flatMap((fault) =>
    fault.kind === "sweepsLost" ? Array.from({ length: fault.count }, (_, i) => fault.firstCounter + i) : [],
  );
}
