/** The data page: what is kept here, and the ways out, in, and away for good. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { DataCalls } from "../../screens/DataScreen.js";
import type { ImportPlan } from "../../meals/backupContents.js";
import { numberText } from "../../text/formats.js";
import type { StoreError } from "../../store/storeError.js";
import { STORE_TABLES } from "../../store/storeTypes.js";
import type { BackupFault, DataState } from "../../views/dataView.js";
import type { AppModel } from "../appModel.js";
import { giveFile } from "../meals/giveFile.js";
import { nowIso } from "../ports.js";
import { backupFile } from "./backupFile.js";
import { askToPersist, readDataFacts, type DataFacts } from "./dataFacts.js";
import { createImportControl, type ImportControl } from "./importControl.js";
import { forgetReminder } from "./backupReminder.js";
import { forgetLook } from "../firstLook.js";
import { forgetBackups, noteBackup } from "./lastBackup.js";

/** Writes that follow one another closely are counted once. */
const SETTLE_MS = 150;

export type Counting =
  | { readonly kind: "counting" }
  | { readonly kind: "counted"; readonly facts: DataFacts }
  | { readonly kind: "failed"; readonly error: StoreError };

export interface DataControl {
  readonly counting: ReadonlySignal<Counting>;
  readonly fault: ReadonlySignal<DataState["fault"]>;
  readonly saving: ReadonlySignal<boolean>;
  /** null while the sheet is closed. */
  readonly erase: ReadonlySignal<{ readonly sure: boolean } | null>;
  readonly importing: ImportControl;
  readonly calls: Omit<DataCalls, "onBack">;
  count(): Promise<void>;
  carryOut(): Promise<void>;
  close(): void;
}

type Parts = Pick<
  AppModel,
  | "ports"
  | "diet"
  | "noses"
  | "drafts"
  | "samples"
  | "preferences"
  | "toasts"
  | "lost"
  | "reminder"
  | "tellStoreError"
  | "dropDemo"
>;

/** @param restart - loads the app anew, as on a fresh phone */
export function createDataControl(app: Parts, restart: () => void): DataControl {
  const { store } = app.ports;
  const counting = signal<Counting>({ kind: "counting" });
  const fault = signal<DataState["fault"]>(null);
  const erase = signal<{ sure: boolean } | null>(null);
  const importing = createImportControl(store, () => {
    const active = app.noses.active.value;
    return {
      demoNose: active.kind === "ready" && active.demo,
      noProfile: app.preferences.profileLost.value || !app.diet.hasProfile.value,
    };
  });
  const saving = signal(false);
  let settling: ReturnType<typeof setTimeout> | undefined;

  async function count(): Promise<void> {
    const facts = await readDataFacts(store);
    counting.value = facts.ok
      ? { kind: "counted", facts: facts.value }
      : { kind: "failed", error: facts.error };
  }

  async function save(withPhotos: boolean): Promise<void> {
    if (saving.value) return;
    saving.value = true;
    const given = await giveBackup(app, withPhotos);
    saving.value = false;
    fault.value = given.kind === "failed" ? { way: "out", cause: given.fault } : null;
    await count();
    const counted = counting.value;
    if (given.kind === "given" && counted.kind === "counted") tellSaved(app, counted.facts, withPhotos);
  }

  async function read(file: File): Promise<void> {
    fault.value = null;
    const opened = await importing.read(file);
    if (!opened.ok) fault.value = { way: "in", cause: opened.error };
  }

  async function eraseAll(): Promise<void> {
    if (erase.value?.sure !== true) return;
    const erased = await store.deleteEverything();
    if (!erased.ok) return app.tellStoreError(erased.error);
    forgetThisBrowser();
    restart();
  }

  const unsubscribe = store.subscribe(STORE_TABLES, () => {
    clearTimeout(settling);
    settling = setTimeout(() => void count(), SETTLE_MS);
  });
  void count();

  return {
    counting,
    fault,
    saving,
    erase,
    importing,
    count,
    carryOut: () => carryOut(app, importing),
    calls: {
      onPersist: () => void askToPersist().then(count),
      onSave: (withPhotos) => void save(withPhotos),
      onFile: (file) => void read(file),
      onDropDemo: () => void dropDemo(app),
      onErase: (what) => {
        if (what === "now") return void eraseAll();
        erase.value = what === "open" ? { sure: false } : null;
      },
      onEraseSure: (sure) => {
        erase.value = { sure };
      },
    },
    close: () => {
      clearTimeout(settling);
      unsubscribe();
      importing.close();
    },
  };
}

type Given =
  { readonly kind: "given" | "dropped" } | { readonly kind: "failed"; readonly fault: BackupFault };

/** Hands the backup to the person; one that was not taken is not counted as the last. */
async function giveBackup(
  { ports, reminder }: Pick<Parts, "ports" | "reminder">,
  withPhotos: boolean,
): Promise<Given> {
  const at = nowIso(ports);
  const file = await backupFile(ports.store, at, withPhotos);
  if (!file.ok) return { kind: "failed", fault: file.error };
  if ((await giveFile(file.value)) === "dropped") return { kind: "dropped" };
  noteBackup(at);
  await reminder.rest();
  return { kind: "given" };
}

/** Records that a plan writes. */
const recordsIn = ({ fresh, differing }: ImportPlan): number =>
  fresh.length + differing.filter(({ choice }) => choice !== "keepMine").length;

/** What is kept apart from the data. */
function forgetThisBrowser(): void {
  forgetBackups();
  forgetReminder();
  forgetLook();
}

/** Says what the backup holds. */
function tellSaved({ preferences, toasts }: Parts, { meals, photos }: DataFacts, withPhotos: boolean): void {
  const { text, formats } = preferences.words.value;
  const whole = (value: number) => numberText(value, formats);
  toasts.show(
    withPhotos ? text.data.saved(whole(meals), whole(photos)) : text.data.savedNoPhotos(whole(meals)),
  );
}

/** Brings in what was planned, reads everything anew, and says how many records it was. */
async function carryOut(app: Parts, importing: ImportControl): Promise<void> {
  const plan = importing.open.value?.plan;
  const done = await importing.carryOut();
  if (!done.ok) return app.tellStoreError(done.error);
  app.lost.settle();
  await Promise.all([app.preferences.load(), app.noses.load(), app.drafts.load(), app.samples.load()]);
  const { text, formats } = app.preferences.words.value;
  app.toasts.show(text.data.plan.done(numberText(plan === undefined ? 0 : recordsIn(plan), formats)));
}

async function dropDemo(app: Parts): Promise<void> {
  const dropped = await app.dropDemo();
  if (!dropped.ok) app.tellStoreError(dropped.error);
}
