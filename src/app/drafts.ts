/** A sniff that was cut short: kept at once, so that a closed page loses nothing, and offered at the next start. */
import { batch, signal, type ReadonlySignal } from "@preact/signals";
import type { Sniff } from "../sniff/sniff.js";
import { nowIso, type Ports } from "./ports.js";
import { untilHere } from "./pieces.js";

const KIND = "sniff";

export interface Drafts {
  /** The newest one; null where there is none. */
  readonly sniff: ReadonlySignal<Sniff | null>;
  readonly loaded: ReadonlySignal<boolean>;
  load(): Promise<void>;
  keep(sniff: Sniff): Promise<void>;
  drop(): Promise<void>;
}

export function createDrafts({ store, nowMs }: Ports): Drafts {
  const sniff = signal<Sniff | null>(null);
  const loaded = signal(false);
  return {
    sniff,
    loaded,
    load: async () => {
      const drafts = await store.listDrafts();
      if (!drafts.ok) {
        loaded.value = true;
        return;
      }
      const newest = drafts.value.items.find(({ kind }) => kind === KIND);
      const { parseSniff } = await untilHere(() => import("./reading.js"));
      const parsed = parseSniff(newest?.value);
      batch(() => {
        sniff.value = parsed.ok ? parsed.value : null;
        loaded.value = true;
      });
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
