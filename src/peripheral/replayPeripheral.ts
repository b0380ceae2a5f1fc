/** A sniffer that plays recorded sniffs: each start command plays the next one, and after the last the first. */
import type { Recording, RecordedSweep } from "./recording.js";
import { createCorePeripheral, type CorePeripheral } from "./corePeripheral.js";
import type { Clock, Peripheral } from "./peripheral.js";

export interface ReplayOptions {
  readonly recording: Recording;
  readonly clock: Clock;
  readonly model: string;
  readonly firmware: string;
  /** Told which sniff begins. */
  readonly onPlay: (sniffId: string) => void;
}

const TICK_MS = 50;
/** As long as another purge; nothing is driven off here. */
const PURGE_MS = 20_000;

export function createReplayPeripheral(options: ReplayOptions): Peripheral {
  const { recording, clock, model, firmware } = options;
  const { layout, senses } = recording;
  const device = createCorePeripheral(
    { layout, senses, model, firmware, purgeMs: PURGE_MS, heatedBeforeMs: 0, firstSequence: 0 },
    clock,
  );
  const stopping = new AbortController();
  let running: Promise<void> = Promise.resolve();
  return {
    addresses: device.addresses,
    read: device.read,
    write: device.write,
    onNotification: device.onNotification,
    start: () => {
      device.feed({ kind: "heatersOn" });
      device.feed({ kind: "air", reading: recording.sniffs[0]?.sweeps[0]?.air ?? {} });
      running = play(options, device, stopping.signal);
    },
    stop: async () => {
      stopping.abort();
      await running;
    },
  };
}

async function play(options: ReplayOptions, device: CorePeripheral, signal: AbortSignal): Promise<void> {
  const { recording, clock, onPlay } = options;
  let played = 0;
  let playing: string | null = null;
  let left: readonly RecordedSweep[] = [];
  while (!signal.aborted) {
    device.feed({ kind: "time" });
    const { activity, run } = device.core();
    const wanted = activity.kind === "measuring" ? `${run} since ${activity.sinceMs}` : null;
    if (wanted !== null && wanted !== playing) {
      const sniff = recording.sniffs[played % recording.sniffs.length];
      played += 1;
      left = sniff?.sweeps ?? [];
      onPlay(sniff?.id ?? "");
    }
    playing = wanted;
    if (activity.kind === "measuring") left = sendDue(device, left, activity.sinceMs, clock.nowMs());
    await clock.wait(TICK_MS, signal);
  }
}

/** Sends what is over by now. @returns what is left; when nothing is left the run ends, for nothing is made up */
function sendDue(
  device: CorePeripheral,
  sweeps: readonly RecordedSweep[],
  sinceMs: number,
  nowMs: number,
): readonly RecordedSweep[] {
  const due = sweeps.filter(({ endMs }) => sinceMs + endMs <= nowMs);
  for (const { startMs, ohm, air } of due) {
    if (air !== device.core().air) device.feed({ kind: "air", reading: air });
    device.feed({ kind: "sweep", startedAtMs: sinceMs + startMs, ohm });
  }
  const left = sweeps.slice(due.length);
  if (left.length === 0) device.feed({ kind: "nothingMoreToPlay" });
  return left;
}
