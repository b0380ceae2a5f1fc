/** Readings of the check jar, and what they say of the connected sniffer. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { jarScore, judgeJar, type JarVerdict } from "../../flows/checkJar.js";
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

export function createJarControl(ports: Ports, sniffer: ReadonlySignal<SnifferState>): JarControl {
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
    verdict: computed(() => judgeJar(readings.value.map(({ score }) => score))),
    load,
    take: async (sniff) => {
      const score = jarScore(sniff);
      if (score === null) return { ok: true, value: false };
      const reading = {
        id: ports.newId(),
        at: nowIso(ports),
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
