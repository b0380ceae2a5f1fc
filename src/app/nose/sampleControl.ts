/** Samples: sniffs whose groups are known. Kept, taken back, brought in from files and from the demo. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { GroupTruths } from "../../kernel/groups.js";
import { err, ok, type Result } from "../../kernel/result.js";
import type { Sniff } from "../../sniff/sniff.js";
import type { LineFault } from "../../sniff/sniffFile.js";
import type { StoreError } from "../../store/storeError.js";
import type { SampleLabel, SniffNote } from "../../store/storeTypes.js";
import type { SampleNote } from "../../views/samplesView.js";
import { nowIso, type Ports } from "../ports.js";
import { sniffNotes } from "../sniffNotes.js";
import { untilHere } from "../pieces.js";

const DEMO_SAMPLES = "models/demo.sniffs.jsonl";
/** More than a year of plates; a file beyond it is no sniff file of a person. */
const LARGEST_FILE_BYTES = 64 * 1024 * 1024;

const loadReading = () => untilHere(() => import("../reading.js"));

/** What bringing in a file came to. */
export interface BroughtIn {
  readonly samples: number;
  readonly faults: readonly LineFault[];
}

export type BringInError = StoreError | { readonly kind: "tooLarge" };

export interface SampleControl {
  /** Newest first. */
  readonly samples: ReadonlySignal<readonly SampleNote[]>;
  load(): Promise<void>;
  /** Keeps the sniff itself too, if it is not kept yet. */
  keep(
    sniff: Sniff,
    what: { dish: string; plate: string; groups: GroupTruths },
    demo: boolean,
  ): Promise<Result<void, StoreError>>;
  /** No longer a sample; the sweeps stay. */
  release(sniffId: string): Promise<Result<void, StoreError>>;
  bringIn(file: File): Promise<Result<BroughtIn, BringInError>>;
  bringInDemo(): Promise<Result<BroughtIn, BringInError>>;
  dropDemo(): Promise<Result<number, StoreError>>;
  asFile(): Promise<Result<string, StoreError>>;
}

export function createSampleControl(ports: Ports): SampleControl {
  const { store } = ports;
  const samples = signal<readonly SampleNote[]>([]);

  async function load(): Promise<void> {
    const notes = await sniffNotes(store, { samplesOnly: true });
    if (notes.ok) samples.value = notes.value.flatMap(sampleNote);
  }

  async function bringInText(text: string, demo: boolean): Promise<Result<BroughtIn, BringInError>> {
    const { readSniffFile } = await loadReading();
    const { sniffs, faults } = readSniffFile(text);
    const keptAt = nowIso(ports);
    const labels = Object.fromEntries(
      sniffs.filter(isLabelled).map((sniff) => [sniff.id, labelOf(sniff, keptAt)]),
    );
    const saved = await store.save({ sniffs, labels, demo });
    if (!saved.ok) return saved;
    await load();
    return ok({ samples: Object.keys(labels).length, faults });
  }

  return {
    samples,
    load,
    keep: async (sniff, { dish, plate, groups }, demo) => {
      const label = { groups, dish, plate, occasion: sniff.occasion, keptAt: nowIso(ports) };
      const saved = await store.save({ sniffs: [sniff], labels: { [sniff.id]: label }, demo });
      if (saved.ok) await load();
      return saved;
    },
    release: async (sniffId) => {
      const released = await store.labelSniff(sniffId, null, nowIso(ports));
      if (released.ok) await load();
      return released;
    },
    bringIn: async (file) =>
      file.size > LARGEST_FILE_BYTES ? err({ kind: "tooLarge" }) : bringInText(await file.text(), false),
    bringInDemo: async () => {
      const text = await ports.fetchText(DEMO_SAMPLES);
      if (text === null) return err({ kind: "unexpected", detail: DEMO_SAMPLES });
      return bringInText(text, true);
    },
    dropDemo: async () => {
      const removed = await store.removeDemo();
      if (removed.ok) await load();
      return removed;
    },
    asFile: async () => {
      const kept = await store.readSamples();
      return kept.ok ? ok((await loadReading()).writeSniffFile(kept.value.samples)) : kept;
    },
  };
}

function sampleNote({ sniffId, takenAt, snifferId, label, demo }: SniffNote): SampleNote[] {
  if (label === null) return [];
  const { dish, plate, occasion, groups } = label;
  return [{ sniffId, takenAt, dish, plate, occasion, snifferId, groups, demo }];
}

const isLabelled = (sniff: Sniff) => Object.values(sniff.groups).some((truth) => truth !== "unknown");

function labelOf({ groups, plate, occasion, dish }: Sniff, keptAt: string): SampleLabel {
  return { groups, plate, occasion, dish, keptAt };
}
