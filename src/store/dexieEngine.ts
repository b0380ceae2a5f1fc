/** Rows in IndexedDB, through Dexie. The only file that knows Dexie. */
import { cmp, Dexie, type Transaction } from "dexie";
import { err, ok, type Result } from "../kernel/result.js";
import {
  ENGINE_TABLES,
  type Engine,
  type EngineTable,
  type EngineTransaction,
  type Row,
  type RowRange,
} from "./engine.js";
import { asStoreError, knownError, type Stored, type StoreError } from "./storeError.js";
import type { StoreTable } from "./storeTypes.js";

/** How to open the database. */
export interface DexieEngineOptions {
  readonly name: string;
  /** For tests: another IndexedDB than the browser's own. */
  readonly indexedDB?: IDBFactory;
  readonly IDBKeyRange?: typeof IDBKeyRange;
  /** How long an upgrade may wait for other tabs to close. Default 5000. */
  readonly blockedAfterMs?: number;
}

/** Raise it with each change of the tables, add the change to `declareVersions`, and a fixture of the old one. */
export const DATABASE_VERSION = 1;

/** Dexie multiplies its version numbers by ten. */
const DEXIE_VERSION_STEP = 10;
const INDEXES = "id, [bucket+atMs+id], demo";

function declareVersions(db: Dexie): void {
  db.version(DATABASE_VERSION).stores(Object.fromEntries(ENGINE_TABLES.map((table) => [table, INDEXES])));
}

/** Opens the database, and says in words why not. */
export async function openDexieEngine(options: DexieEngineOptions): Promise<Result<Engine, StoreError>> {
  const factory = options.indexedDB ?? globalThis.indexedDB;
  const keyRange = options.IDBKeyRange ?? globalThis.IDBKeyRange;
  if (factory === undefined || keyRange === undefined) return err({ kind: "unavailable" });
  const db = new Dexie(options.name, {
    autoOpen: false,
    cache: "disabled",
    // A write is acknowledged when it is on the disk, not when the system has it in hand.
    chromeTransactionDurability: "strict",
    indexedDB: factory,
    IDBKeyRange: keyRange,
  });
  declareVersions(db);
  let wasCreated = false;
  db.on("populate", () => {
    wasCreated = true;
  });
  const opened = await openInTime(db, options.blockedAfterMs ?? 5000);
  if (!opened.ok) return opened;
  // Dexie opens a newer database too; writing old shapes into it would harm it.
  if (db.backendDB().version > DATABASE_VERSION * DEXIE_VERSION_STEP) {
    db.close();
    return err({ kind: "newerVersion" });
  }
  return ok(engineOn(db, wasCreated));
}

async function openInTime(db: Dexie, blockedAfterMs: number): Promise<Result<void, StoreError>> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const blocked = new Promise<Result<void, StoreError>>((settle) => {
    db.on("blocked", () => {
      timer = setTimeout(() => settle(err({ kind: "blockedUpgrade" })), blockedAfterMs);
    });
  });
  const opening = Promise.resolve(db.open()).then(
    () => ok(undefined),
    (cause: unknown) => err(asStoreError(cause)),
  );
  const outcome = await Promise.race([opening, blocked]);
  clearTimeout(timer);
  if (!outcome.ok) db.close();
  return outcome;
}

function engineOn(db: Dexie, wasCreated: boolean): Engine {
  const listeners = new Set<(tables: readonly StoreTable[]) => void>();
  const closedListeners = new Set<() => void>();
  const channel = new BroadcastChannel(`nidor-store-${db.name}`);
  channel.onmessage = (event: MessageEvent<readonly StoreTable[]>) =>
    listeners.forEach((listener) => listener(event.data));

  let closed = false;
  const close = () => {
    closed = true;
    channel.close();
    listeners.clear();
    db.close();
  };
  const closedFromOutside = () => {
    if (closed) return;
    close();
    closedListeners.forEach((listener) => listener());
  };
  // Another tab wants a newer version, or deletes the database: get out of its way at once.
  db.on("versionchange", () => {
    closedFromOutside();
    return false;
  });
  // The browser cleared the site's data, or lost the disk.
  db.on("close", closedFromOutside);

  return {
    wasCreated,
    read: (tables, work) => run(db, "r", tables, work),
    write: async (tables, changed, work) => {
      const outcome = await run(db, "rw", tables, work);
      if (outcome.ok && !closed) {
        listeners.forEach((listener) => listener(changed));
        channel.postMessage(changed);
      }
      return outcome;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onClosed: (listener) => void closedListeners.add(listener),
    close,
  };
}

async function run<T>(
  db: Dexie,
  mode: "r" | "rw",
  tables: readonly EngineTable[],
  work: (tx: EngineTransaction) => Promise<T>,
): Stored<T> {
  if (!db.isOpen()) return err({ kind: "closed" });
  let native: IDBTransaction | undefined;
  try {
    return ok(
      await db.transaction(mode, [...tables], (transaction) => {
        native = transaction.idbtrans;
        return work(transactionOn(transaction));
      }),
    );
  } catch (cause) {
    if (cause instanceof RangeError) throw cause;
    // When the whole transaction fails, its requests only say that they were aborted; the transaction says why.
    return err(knownError(native?.error) ?? asStoreError(cause));
  }
}

function transactionOn(transaction: Transaction): EngineTransaction {
  const rows = (table: EngineTable) => transaction.table<Row, string>(table);
  return {
    get: async (table, id) => rows(table).get(id),
    put: async (table, added) => void (await rows(table).bulkPut(added)),
    remove: async (table, ids) => rows(table).bulkDelete([...ids]),
    range: async (table, bucket, range = {}) => {
      const { lower, upper } = boundsOf(bucket, range);
      const forward = rows(table).where("[bucket+atMs+id]").between(lower, upper, false, false);
      const found = range.oldestFirst === true ? forward : forward.reverse();
      return found.limit(range.limit ?? Infinity).toArray();
    },
    count: async (table, bucket) => {
      const { lower, upper } = boundsOf(bucket, {});
      return rows(table).where("[bucket+atMs+id]").between(lower, upper).count();
    },
    all: async (table) => rows(table).orderBy("id").toArray(),
    demoIds: async (table) => (await rows(table).where("demo").equals(1).primaryKeys()) as string[],
    clear: async (table) => rows(table).clear(),
  };
}

/** Neither bound is included: ids are not empty, so [bucket, t, ""] stands before every row at t. */
function boundsOf(bucket: string, range: RowRange): { lower: unknown[]; upper: unknown[] } {
  const after = range.after === undefined ? undefined : [bucket, range.after.atMs, range.after.id];
  const lower = [bucket, range.fromMs ?? Dexie.minKey, ""];
  const upper = range.beforeMs === undefined ? [bucket, Dexie.maxKey] : [bucket, range.beforeMs, ""];
  if (after === undefined) return { lower, upper };
  if (range.oldestFirst === true) return { lower: cmp(after, lower) > 0 ? after : lower, upper };
  return { lower, upper: cmp(after, upper) < 0 ? after : upper };
}
