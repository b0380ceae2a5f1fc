/** Bringing in a backup: read, planned, shown, carried out in one piece or not at all. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { err, ok, type Result } from "../../kernel/result.js";
import type { BackupError } from "../../meals/backup.js";
import {
  BACKUP_TABLES,
  type BackupContents,
  type ImportChoice,
  type ImportPlan,
} from "../../meals/backupContents.js";
import { decide, planImport } from "../../meals/importPlan.js";
import { ACTIVE_NOSE_ID, SETTINGS_ID } from "../../store/rows.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import { STORE_TABLES } from "../../store/storeTypes.js";
import { breather } from "../breather.js";
import { readBackupFile } from "./backupFile.js";

export interface OpenImport {
  readonly contents: BackupContents;
  readonly plan: ImportPlan;
  readonly doing: boolean;
}

export interface ImportControl {
  /** null while nothing is being brought in. */
  readonly open: ReadonlySignal<OpenImport | null>;
  read(file: File): Promise<Result<void, StoreError | BackupError>>;
  choose(table: string, id: string, choice: string): void;
  /** All of it or nothing; the plan stays open if the phone refuses. */
  carryOut(): Promise<Result<void, StoreError>>;
  drop(): void;
  close(): void;
}

/** What here was not entered by the person, and so does not stand against a backup. */
export interface NotChosen {
  /** The nose in use is the demo one. */
  readonly demoNose: boolean;
  /** No diet and no allergy was entered here, or they could not be read. */
  readonly noProfile: boolean;
}

export function createImportControl(store: Store, notChosen: () => NotChosen): ImportControl {
  const open = signal<OpenImport | null>(null);

  async function planFor(contents: BackupContents): Promise<Result<ImportPlan, StoreError>> {
    const here = await store.existingRecords(breather());
    if (!here.ok) return here;
    const plan = planImport(here.value, contents);
    const { demoNose, noProfile } = notChosen();
    const withNose = demoNose ? withTheirs(plan, ACTIVE_NOSE_ID) : plan;
    return ok(noProfile ? withTheirs(withNose, SETTINGS_ID) : withNose);
  }

  /** What was shown no longer holds: the plan is made anew, and choices that still make sense stay. */
  async function planAnew(): Promise<void> {
    const before = open.value;
    if (before === null || before.doing) return;
    const plan = await planFor(before.contents);
    if (open.value !== before || !plan.ok) return;
    open.value = { ...before, plan: withChoicesOf(plan.value, before.plan) };
  }

  const unsubscribe = store.subscribe(STORE_TABLES, () => void planAnew());
  return {
    open,
    read: async (file) => {
      const contents = await readBackupFile(file);
      if (!contents.ok) return contents;
      const plan = await planFor(contents.value);
      if (!plan.ok) return plan;
      open.value = { contents: contents.value, plan: plan.value, doing: false };
      return ok(undefined);
    },
    choose: (tableName, id, choiceName) => {
      const table = BACKUP_TABLES.find((known) => known === tableName);
      const differing = open.value?.plan.differing.find(({ mine }) => mine.table === table && mine.id === id);
      const choice = differing?.choices.find((known) => known === choiceName);
      if (open.value === null || table === undefined || choice === undefined) return;
      open.value = { ...open.value, plan: decide(open.value.plan, table, id, choice) };
    },
    carryOut: async () => {
      const now = open.value;
      if (now === null || now.doing) return err({ kind: "aborted" });
      open.value = { ...now, doing: true };
      const done = await store.applyImport(now.plan);
      open.value = done.ok ? null : { ...now, doing: false };
      return done;
    },
    drop: () => {
      if (open.value?.doing !== true) open.value = null;
    },
    close: unsubscribe,
  };
}

/** Proposes the backup's settings of that id, where they differ. */
function withTheirs(plan: ImportPlan, id: string): ImportPlan {
  const differs = plan.differing.some(({ mine }) => mine.table === "settings" && mine.id === id);
  return differs ? decide(plan, "settings", id, "takeTheirs") : plan;
}

/** A choice holds only for the record that it was made about, not for what has come in its place. */
function withChoicesOf(plan: ImportPlan, before: ImportPlan): ImportPlan {
  const key = ({ mine }: ImportPlan["differing"][number]) => `${mine.table}:${mine.id}:${mine.fingerprint}`;
  const chosen = new Map<string, ImportChoice>(before.differing.map((one) => [key(one), one.choice]));
  return {
    ...plan,
    differing: plan.differing.map((one) => ({ ...one, choice: chosen.get(key(one)) ?? one.choice })),
  };
}
