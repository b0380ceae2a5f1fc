/** The nose in use, teaching a new one, and the word on it: keep, put back, bring in from a file. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type * as judgingPiece from "./judging.js";
import type { ActiveNose, OfferSource, TeachState } from "../flows/teachState.js";
import { type Channel, sameChannels } from "../kernel/channel.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { Nose } from "../nose/nose.js";
import type { NoseFileError } from "../nose/noseFile.js";
import type { GroupComparison } from "../nose/report.js";
import type { NoseList } from "../store/noseStore.js";
import type { StoreError } from "../store/storeError.js";
import type { TeachClient } from "../worker/teachClient.js";
import { untilIdle } from "./untilIdle.js";
import { createTeaching } from "./nose/teaching.js";
import { nowIso, type Ports } from "./ports.js";
import { untilHere } from "./pieces.js";

const DEMO_NOSE = "models/demo.nose.json";

/** Reading noses and judging sniffs, in a piece that the first screen does not wait for. */
const loadJudging = () => untilHere(() => import("./judging.js"));
const loadReading = () => untilHere(() => import("./reading.js"));

/** Why a nose from a file was not offered. */
export type NoseImportError =
  | NoseFileError
  | { readonly kind: "alreadyKept" } // this very nose is among the versions
  | { readonly kind: "busy" } // another nose is being taught or awaits a word
  | { readonly kind: "storage" };

export interface NoseControl {
  /** null until it is loaded. */
  readonly judging: ReadonlySignal<typeof judgingPiece | null>;
  readonly active: ReadonlySignal<ActiveNose>;
  /** What is in use is known, and can judge: no page of it is drawn before. */
  readonly loaded: ReadonlySignal<boolean>;
  /** The nose itself; null while there is none that could judge. */
  readonly current: ReadonlySignal<Nose | null>;
  readonly teaching: ReadonlySignal<TeachState>;
  /** Reads the nose in use; on a fresh phone the demo nose is put in place. */
  load(): Promise<void>;
  /** Teaches anew on all samples, or brings the nose in use up to date with the fresh ones. */
  teach(name: string, how: "anew" | "refresh"): Promise<void>;
  cancelTeaching(): void;
  /** The nose is ready; what is left of its checks is left out. */
  skipChecks(): void;
  /** The person's word on the proposed nose. */
  decide(accept: boolean): Promise<Result<void, StoreError>>;
  dismissProblem(): void;
  /** Puts a kept version beside the nose in use and awaits the person's word. */
  offerVersion(id: string): Promise<Result<void, StoreError>>;
  /** @param channels - of the connected sniffer, which the nose must suit; null if none is connected */
  importNose(fileText: string, channels: readonly Channel[] | null): Promise<Result<void, NoseImportError>>;
  /** Keeps a nose that was moved to another sniffer, and awaits the person's word on it. */
  offerMoved(
    nose: Nose,
    compared: readonly GroupComparison[],
  ): Promise<Result<void, StoreError | { readonly kind: "busy" }>>;
  exportNose(id: string): Promise<Result<string, StoreError>>;
}

export function createNoseControl(ports: Ports, client: TeachClient, wasmPath: string): NoseControl {
  const active = signal<ActiveNose>({ kind: "loading" });
  const judging = signal<typeof judgingPiece | null>(null);
  const teaching = signal<TeachState>({ kind: "idle" });
  const { store, newId } = ports;
  const current = computed(() => (active.value.kind === "ready" ? active.value.nose : null));

  // A file may be chosen before the nose in use is read.
  let loaded = Promise.resolve();

  async function load(): Promise<void> {
    const [noses, settings] = [await store.listNoses(), await store.getSettings()];
    const { readPreferences } = await loadReading();
    const preferences = settings.ok ? readPreferences(settings.value).preferences : null;
    const unwanted = preferences === null || preferences.demoDropped;
    if (noses.ok && !unwanted && isDemoDue(noses.value)) await installDemoNose(ports);
    const [nose, piece] = [await readActive(ports), await loadJudging()];
    if (nose.kind === "ready" && preferences !== null)
      await prepare(piece, nose.nose, preferences.acceptedMissRate);
    active.value = nose;
    judging.value = piece;
  }

  const { teach, offer, propose } = createTeaching(ports, client, wasmPath, teaching, current);

  const isFree = () => ["idle", "problem"].includes(teaching.value.kind);

  async function use(id: string, decision: "accepted" | "rolledBack") {
    const decided = await store.decideNose(id, decision, newId(), nowIso(ports));
    if (decided.ok) active.value = await readActive(ports);
    return decided;
  }

  async function decide(accept: boolean): Promise<Result<void, StoreError>> {
    const { value } = teaching;
    if (value.kind !== "proposed") return ok(undefined);
    const { id } = value.nose;
    const isVersion = value.source === "version";
    const refuse = () =>
      isVersion ? ok(undefined) : store.decideNose(id, "rejected", newId(), nowIso(ports));
    const decided = accept ? await use(id, isVersion ? "rolledBack" : "accepted") : await refuse();
    if (decided.ok) teaching.value = { kind: "idle" };
    return decided;
  }

  return {
    active,
    current,
    judging,
    loaded: computed(() => active.value.kind !== "loading" && judging.value !== null),
    teaching,
    load: () => (loaded = load()),
    teach,
    cancelTeaching: () => {
      if (teaching.value.kind !== "teaching") return;
      teaching.value = { ...teaching.value, cancelling: true };
      client.cancel();
    },
    skipChecks: () => {
      if (teaching.value.kind !== "teaching") return;
      teaching.value = { ...teaching.value, cancelling: true };
      client.skipChecks();
    },
    decide,
    dismissProblem: () => {
      if (teaching.value.kind === "problem") teaching.value = { kind: "idle" };
    },
    offerMoved: async (nose, compared) => {
      if (!isFree()) return err({ kind: "busy" });
      const kept = await keepNose(ports, nose);
      if (kept.ok) propose(nose, "moved", compared);
      return kept;
    },
    ...keptNoses(ports, (nose, source) => loaded.then(() => offer(nose, source)), isFree),
  };
}

type KeptNoses = Pick<NoseControl, "offerVersion" | "importNose" | "exportNose">;

/** Noses from the versions, from files and to files. None is in use before the person says so. */
function keptNoses(
  ports: Ports,
  offer: (nose: Nose, source: OfferSource) => Promise<void>,
  isFree: () => boolean,
): KeptNoses {
  const { store } = ports;
  return {
    offerVersion: async (id) => {
      if (!isFree()) return ok(undefined);
      const stored = await store.getNose(id);
      if (!stored.ok) return stored;
      await offer(stored.value, "version");
      return ok(undefined);
    },
    importNose: async (fileText, channels) => {
      if (!isFree()) return err({ kind: "busy" });
      const nose = (await loadJudging()).parseNose(fileText);
      if (!nose.ok) return nose;
      if (channels !== null && !sameChannels(nose.value.sniffer.channels, channels))
        return err({ kind: "otherChannels" });
      const known = await store.listNoses();
      if (!known.ok) return err({ kind: "storage" });
      if (known.value.noses.some(({ id }) => id === nose.value.id)) return err({ kind: "alreadyKept" });
      if (!(await keepNose(ports, nose.value)).ok) return err({ kind: "storage" });
      await offer(nose.value, "file");
      return ok(undefined);
    },
    exportNose: async (id) => {
      const stored = await store.getNose(id);
      return stored.ok ? ok((await loadJudging()).serialiseNose(stored.value)) : stored;
    },
  };
}

/** The rules are kept for later. Group by group: all at once they take longer than a tap may wait. */
async function prepare(
  { groupJudge }: typeof judgingPiece,
  nose: Nose,
  acceptedMissRate: number,
): Promise<void> {
  for (const group of nose.groups) {
    groupJudge(group, acceptedMissRate).canAlarm();
    await untilIdle();
  }
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

/** Nothing is here and nothing was decided but, perhaps, half of this very work: a page may close in the middle. */
function isDemoDue({ noses, history }: NoseList): boolean {
  return noses.every(({ demo }) => demo) && history.every(({ decision }) => decision === "taught");
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
