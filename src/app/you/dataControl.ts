/** The data page: what is kept here, and the ways out, in, and away for good. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { DataCalls } from "../../screens/DataScreen.js";
import type { StoreError } from "../../store/storeError.js";
import { STORE_TABLES } from "../../store/storeTypes.js";
import type { BackupFault } from "../../views/dataView.js";
import type { AppModel } from "../appModel.js";
import { giveFile } from "../meals/giveFile.js";
import { nowIso, type Ports } from "../ports.js";
import { backupFile } from "./backupFile.js";
import { askToPersist, readDataFacts, type DataFacts } from "./dataFacts.js";
import { createImportControl, type ImportControl } from "./importControl.js";
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
  readonly fault: ReadonlySignal<BackupFault | null>;
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
  "ports" | "noses" | "drafts" | "samples" | "preferences" | "tellStoreError" | "dropDemo"
>;

/** @param restart - loads the app anew, as on a fresh phone */
export function createDataControl(app: Parts, restart: () => void): DataControl {
  const { store } = app.ports;
  const counting = signal<Counting>({ kind: "counting" });
  const fault = signal<BackupFault | null>(null);
  const erase = signal<{ sure: boolean } | null>(null);
  const importing = createImportControl(store, () => {
    const active = app.noses.active.value;
    return {
      demoNose: active.kind === "ready" && active.demo,
      profileLost: app.preferences.profileLost.value,
    };
  });
  let isSaving = false;
  let settling: ReturnType<typeof setTimeout> | undefined;

  async function count(): Promise<void> {
    const facts = await readDataFacts(store);
    counting.value = facts.ok
      ? { kind: "counted", facts: facts.value }
      : { kind: "failed", error: facts.error };
  }

  async function save(withPhotos: boolean): Promise<void> {
    if (isSaving) return;
    isSaving = true;
    fault.value = await giveBackup(app.ports, withPhotos);
    isSaving = false;
    await count();
  }

  async function read(file: File): Promise<void> {
    fault.value = null;
    const opened = await importing.read(file);
    if (!opened.ok) fault.value = opened.error;
  }

  async function carryOut(): Promise<void> {
    const done = await importing.carryOut();
    if (!done.ok) return app.tellStoreError(done.error);
    await Promise.all([app.preferences.load(), app.noses.load(), app.drafts.load(), app.samples.load()]);
  }

  async function dropDemo(): Promise<void> {
    const dropped = await app.dropDemo();
    if (!dropped.ok) app.tellStoreError(dropped.error);
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
    erase,
    importing,
    count,
    carryOut,
    calls: {
      onPersist: () => void askToPersist().then(count),
      onSave: (withPhotos) => void save(withPhotos),
      onFile: (file) => void read(file),
      onDropDemo: () => void dropDemo(),
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

/** Hands the backup to the person; one that was not taken is not counted as the last. */
async function giveBackup(ports: Ports, withPhotos: boolean): Promise<BackupFault | null> {
  const at = nowIso(ports);
  const file = await backupFile(ports.store, at, withPhotos);
  if (!file.ok) return file.error;
  if ((await giveFile(file.value)) !== "dropped") noteBackup(at);
  return null;
}

/** What is kept apart from the data. */
function forgetThisBrowser(): void {
  forgetBackups();
  forgetLook();
}
