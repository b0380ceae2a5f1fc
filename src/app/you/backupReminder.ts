/** Reminds of a backup. From when it counts is kept apart from the data, as the last backup is. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { recordsToBackUp, type BackupBaseline } from "../../meals/backupReminder.js";
import type { Store } from "../../store/store.js";
import { inStorage } from "../inStorage.js";
import { nowIso, type Ports } from "../ports.js";
import { sniffNotes } from "../sniffNotes.js";

const KEY = "nidor-backup-baseline";

export interface BackupReminder {
  /** Records that no backup holds; null while there is nothing to say. */
  readonly due: ReadonlySignal<number | null>;
  /** Looks whether it is time. The first look only begins to count. */
  check(): Promise<void>;
  /** A backup was saved, or the person said "later": it counts from here. */
  rest(): Promise<void>;
}

export function createBackupReminder(ports: Pick<Ports, "store" | "nowMs">): BackupReminder {
  const due = signal<number | null>(null);

  async function rest(): Promise<void> {
    due.value = null;
    const records = await countRecords(ports.store);
    if (records !== null) keep({ at: nowIso(ports), records });
  }

  return {
    due,
    rest,
    check: async () => {
      const baseline = kept();
      if (baseline === null) return rest();
      const records = await countRecords(ports.store);
      due.value = records === null ? null : recordsToBackUp(baseline, records, ports.nowMs());
    },
  };
}

export const forgetReminder = (): void => void inStorage((storage) => storage.removeItem(KEY));

function keep(baseline: BackupBaseline): void {
  inStorage((storage) => storage.setItem(KEY, JSON.stringify(baseline)));
}

function kept(): BackupBaseline | null {
  try {
    const value: unknown = JSON.parse(inStorage((storage) => storage.getItem(KEY)) ?? "null");
    if (typeof value !== "object" || value === null) return null;
    const { at, records } = value as Record<string, unknown>;
    const isSound = typeof at === "string" && !Number.isNaN(Date.parse(at)) && typeof records === "number";
    return isSound ? { at, records } : null;
  } catch {
    return null;
  }
}

/** Meals and samples that are no practice; null where the phone does not tell. */
async function countRecords(store: Store): Promise<number | null> {
  const meals = await store.countMeals({ withoutDemo: true });
  const samples = await sniffNotes(store, { samplesOnly: true });
  return meals.ok && samples.ok ? meals.value + samples.value.filter(({ demo }) => !demo).length : null;
}
