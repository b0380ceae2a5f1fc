/** The nose in use, teaching a new one, and the word on it: keep, put back, bring in from a file. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type * as judgingPiece from "./judging.js";
import type { ActiveNose, TeachProblem, TeachState } from "../flows/teachState.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { Nose } from "../nose/nose.js";
import type { NoseFileError } from "../nose/noseFile.js";
import type { StoreError } from "../store/storeError.js";
import type { TeachFailure } from "../worker/protocol.js";
import type { TeachClient } from "../worker/teachClient.js";
import { nowIso, type Ports } from "./ports.js";

const DEMO_NOSE = "models/demo.nose.json";

/** Reading noses and judging sniffs, in a piece that the first screen does not wait for. */
const loadJudging = () => import("./judging.js");
const loadReading = () => import("./reading.js");

export interface NoseControl {
  /** null until it is loaded. */
  readonly judging: ReadonlySignal<typeof judgingPiece | null>;
  readonly active: ReadonlySignal<ActiveNose>;
  /** The nose itself; null while there is none that could judge. */
  readonly current: ReadonlySignal<Nose | null>;
  readonly teaching: ReadonlySignal<TeachState>;
  /** Reads the nose in use; on a fresh phone the demo nose is put in place. */
  load(): Promise<void>;
  teach(name: string): Promise<void>;
  cancelTeaching(): void;
  /** The person's word on the proposed nose. */
  decide(accept: boolean): Promise<Result<void, StoreError>>;
  dismissProblem(): void;
  putBack(id: string): Promise<Result<void, StoreError>>;
  importNose(fileText: string): Promise<Result<void, NoseFileError | { readonly kind: "storage" }>>;
  exportNose(id: string): Promise<Result<string, StoreError>>;
}

export function createNoseControl(ports: Ports, client: TeachClient, wasmPath: string): NoseControl {
  const active = signal<ActiveNose>({ kind: "loading" });
  const judging = signal<typeof judgingPiece | null>(null);
  const teaching = signal<TeachState>({ kind: "idle" });
  const { store, newId } = ports;
  const current = computed(() => (active.value.kind === "ready" ? active.value.nose : null));
  const problem = (value: TeachProblem) => {
    teaching.value = { kind: "problem", problem: value };
  };

  async function load(): Promise<void> {
    const [noses, settings] = [await store.listNoses(), await store.getSettings()];
    const { readPreferences } = await loadReading();
    const unwanted = !settings.ok || readPreferences(settings.value).preferences.demoDropped;
    if (noses.ok && noses.value.noses.length === 0 && !unwanted) await installDemoNose(ports);
    active.value = await readActive(ports);
    judging.value = await loadJudging();
  }

  /** Stopped while the samples were still being read: the worker knows nothing of it yet. */
  const isCancelling = () => teaching.value.kind === "teaching" && teaching.value.cancelling;

  function notTaught(failure: TeachFailure): void {
    if (failure.kind === "cancelled") teaching.value = { kind: "idle" };
    else problem(failure);
  }

  async function teach(name: string): Promise<void> {
    if (teaching.value.kind === "teaching") return;
    teaching.value = { kind: "teaching", done: null, cancelling: false };
    const samples = await store.readSamples();
    if (!samples.ok) return problem({ kind: "storage", detail: samples.error.kind });
    if (isCancelling()) return notTaught({ kind: "cancelled" });
    const noseId = newId();
    const job = { samples: samples.value.samples, seed: ports.nowMs() % 2 ** 32, noseId, name };
    const taught = await client.teach({ ...job, taughtAt: nowIso(ports), wasmPath }, ({ done }) => {
      const { value } = teaching;
      if (value.kind === "teaching") teaching.value = { ...value, done };
    });
    if (!taught.ok) return notTaught(taught.error);
    const nose = (await loadJudging()).parseNose(taught.value.noseText);
    if (!nose.ok) return problem({ kind: "badNose", error: nose.error });
    const kept = await keepNose(ports, nose.value);
    if (!kept.ok) return problem({ kind: "storage", detail: kept.error.kind });
    teaching.value = { kind: "proposed", nose: nose.value, before: current.value };
  }

  async function use(id: string, decision: "accepted" | "rolledBack") {
    const decided = await store.decideNose(id, decision, newId(), nowIso(ports));
    if (decided.ok) active.value = await readActive(ports);
    return decided;
  }

  return {
    active,
    current,
    judging,
    teaching,
    load,
    teach,
    cancelTeaching: () => {
      if (teaching.value.kind !== "teaching") return;
      teaching.value = { ...teaching.value, cancelling: true };
      client.cancel();
    },
    decide: async (accept) => {
      if (teaching.value.kind !== "proposed") return ok(undefined);
      const { id } = teaching.value.nose;
      const decided = accept
        ? await use(id, "accepted")
        : await store.decideNose(id, "rejected", newId(), nowIso(ports));
      if (decided.ok) teaching.value = { kind: "idle" };
      return decided;
    },
    dismissProblem: () => {
      if (teaching.value.kind === "problem") teaching.value = { kind: "idle" };
    },
    putBack: (id) => use(id, "rolledBack"),
    ...noseFiles(ports, use),
  };
}

type NoseFiles = Pick<NoseControl, "importNose" | "exportNose">;

/** Noses from files and to files. One that comes in is in use at once, and the one before can be put back. */
function noseFiles(
  ports: Ports,
  use: (id: string, decision: "accepted") => Promise<Result<void, StoreError>>,
): NoseFiles {
  return {
    importNose: async (fileText) => {
      const nose = (await loadJudging()).parseNose(fileText);
      if (!nose.ok) return nose;
      const kept = await keepNose(ports, nose.value);
      const used = kept.ok ? await use(nose.value.id, "accepted") : kept;
      return used.ok ? used : err({ kind: "storage" });
    },
    exportNose: async (id) => {
      const stored = await ports.store.getNose(id);
      return stored.ok ? ok((await loadJudging()).serialiseNose(stored.value)) : stored;
    },
  };
}

async function readActive({ store }: Ports): Promise<ActiveNose> {
  const stored = await store.activeNose();
  if (!stored.ok) return { kind: "unreadable", detail: stored.error.kind };
  if (stored.value === null) return { kind: "none" };
  const nose = stored.value;
  const notes = await store.listNoses();
  const demo = notes.ok && notes.value.noses.some(({ id, demo: isDemo }) => id === nose.id && isDemo);
  return { kind: "ready", nose, demo };
}

function keepNose(ports: Ports, nose: Nose): Promise<Result<void, StoreError>> {
  return ports.store.addNose(nose, ports.newId(), nowIso(ports));
}

/** Without it the app still works: every finding then says that there is no nose. */
async function installDemoNose(ports: Ports): Promise<void> {
  const text = await ports.fetchText(DEMO_NOSE);
  if (text === null) return;
  const nose = (await loadJudging()).parseNose(text);
  if (!nose.ok) return;
  const { id, taughtAt } = nose.value;
  // The same events on every phone, so that a backup of one fits another.
  const kept = await ports.store.addNose(nose.value, `${id}-taught`, taughtAt, { demo: true });
  if (kept.ok) await ports.store.decideNose(id, "accepted", `${id}-accepted`, taughtAt);
}
