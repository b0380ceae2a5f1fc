/** A sniff that was cut short: kept at once, so that a closed page loses nothing, and offered at the next start. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Sniff } from "../sniff/sniff.js";
import { parseSniff } from "../sniff/sniffFile.js";
import { nowIso, type Ports } from "./ports.js";

const KIND = "sniff";

export interface Drafts {
  /** The newest one; null where there is none. */
  readonly sniff: ReadonlySignal<Sniff | null>;
  load(): Promise<void>;
  keep(sniff: Sniff): Promise<void>;
  drop(): Promise<void>;
}

export function createDrafts({ store, nowMs }: Ports): Drafts {
  const sniff = signal<Sniff | null>(null);
  return {
    sniff,
    load: async () => {
      const drafts = await store.listDrafts();
      if (!drafts.ok) return;
      const newest = drafts.value.items.find(({ kind }) => kind === KIND);
      const parsed = parseSniff(newest?.value);
      sniff.value = parsed.ok ? parsed.value : null;
    },
    keep: async (cutShort) => {
      sniff.value = cutShort;
      const draft = { id: cutShort.id, kind: KIND, changedAt: nowIso({ nowMs }), value: cutShort };
      await store.save({ drafts: [draft] });
    },
    drop: async () => {
      const dropped = sniff.value;
      sniff.value = null;
      if (dropped !== null) await store.save({ doneDrafts: [dropped.id] });
    },
  };
}
