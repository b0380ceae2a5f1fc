/** Readings of the check jar, and what they say of the connected sniffer. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { Nose } from "../../nose/nose.js";
import { jarScore, judgeJarFor, type JarVerdict } from "../../flows/checkJar.js";
import type { SnifferState } from "../../flows/snifferState.js";
import type { Result } from "../../kernel/result.js";
import type { Sniff } from "../../sniff/sniff.js";
import type { StoreError } from "../../store/storeError.js";
import type { CheckJarReading } from "../../store/storeTypes.js";
import { nowIso, type Ports } from "../ports.js";

export interface JarControl {
  /** Of the connected sniffer, oldest first. */
  readonly readings: ReadonlySignal<readonly CheckJarReading[]>;
  readonly verdict: ReadonlySignal<JarVerdict>;
  /** Reads what is kept of the connected sniffer. */
  load(): Promise<void>;
  /** Keeps a finished sniff of the jar as one more reading; false where it had no clean air to compare with. */
  take(sniff: Sniff): Promise<Result<boolean, StoreError>>;
}

/** @param nose - the nose in use: a refreshed one sets the drift it has taken in back to nothing */
export function createJarControl(
  ports: Ports,
  sniffer: ReadonlySignal<SnifferState>,
  nose: ReadonlySignal<Nose | null>,
): JarControl {
  const { store } = ports;
  const readings = signal<readonly CheckJarReading[]>([]);

  async function load(): Promise<void> {
    const { value } = sniffer;
    if (value.kind !== "ready") return;
    const kept = await store.listCheckJar(value.sniffer.layout.snifferId);
    if (kept.ok) readings.value = kept.value.items;
  }

  return {
    readings,
    verdict: computed(() => {
      const { value } = nose;
      return judgeJarFor(readings.value, value?.report.refresh === undefined ? null : value.taughtAt);
    }),
    load,
    take: async (sniff) => {
      const score = jarScore(sniff);
      if (score === null) return { ok: true, value: false };
      const reading = {
        id: ports.newId(),
        at: nextAt(nowIso(ports), readings.value.at(-1)?.at),
        snifferId: sniff.sniffer.id,
        sniffId: sniff.id,
        score,
      };
      const saved = await store.save({ sniffs: [sniff], checkJar: [reading] });
      if (!saved.ok) return saved;
      await load();
      return { ok: true, value: true };
    },
  };
}

/** The charts read the readings in their order: a phone's clock that was set back may not put the newest first. */
function nextAt(now: string, last: string | undefined): string {
  const lastMs = last === undefined ? -Infinity : Date.parse(last);
  return Date.parse(now) > lastMs ? now : new Date(lastMs + 1).toISOString();
}
