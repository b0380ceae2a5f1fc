/** Rows in memory, with the manners of a browser database: copies in and out, one writer, all or nothing. */
import { err, ok } from "../kernel/result.js";
import { ENGINE_TABLES, type Engine, type EngineTable, type EngineTransaction, type Row } from "./engine.js";
import { inRange, rowOrder } from "./rowOrder.js";
import { asStoreError, type StoreError } from "./storeError.js";
import type { StoreTable } from "./storeTypes.js";

type Tables = Map<EngineTable, ReadonlyMap<string, Row>>;

/** An engine whose rows are gone with the page. */
export function createMemoryEngine(): Engine {
  let committed: Tables = new Map(ENGINE_TABLES.map((table) => [table, new Map()]));
  let lastWrite: Promise<unknown> = Promise.resolve();
  let closed = false;
  const listeners = new Set<(tables: readonly StoreTable[]) => void>();

  const run = async <T>(work: () => Promise<T>) => {
    if (closed) return err<StoreError>({ kind: "closed" });
    try {
      return ok(await work());
    } catch (cause) {
      if (cause instanceof RangeError) throw cause;
      return err(asStoreError(cause));
    }
  };

  return {
    wasCreated: true,
    read: (_tables, work) => run(() => work(transactionOn(committed))),
    write: (_tables, changed, work) => {
      const attempt = lastWrite.then(() =>
        run(async () => {
          const draft: Tables = new Map(committed);
          const value = await work(transactionOn(draft));
          committed = draft;
          listeners.forEach((listener) => listener(changed));
          return value;
        }),
      );
      lastWrite = attempt.catch(() => undefined);
      return attempt;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onClosed: () => undefined,
    close() {
      closed = true;
      listeners.clear();
    },
  };
}

function transactionOn(tables: Tables): EngineTransaction {
  const rows = (table: EngineTable) => tables.get(table) ?? new Map<string, Row>();
  const sorted = (table: EngineTable, bucket: string) =>
    [...rows(table).values()].filter((row) => row.bucket === bucket).sort(rowOrder);
  return {
    get: async (table, id) => structuredClone(rows(table).get(id)),
    put: async (table, added) => {
      const next = new Map(rows(table));
      for (const row of added) {
        if (typeof row.id !== "string" || row.id === "") throw new RangeError("a row needs an id");
        next.set(row.id, structuredClone(row));
      }
      tables.set(table, next);
    },
    remove: async (table, ids) => {
      const next = new Map(rows(table));
      ids.forEach((id) => next.delete(id));
      tables.set(table, next);
    },
    range: async (table, bucket, range = {}) => {
      const found = sorted(table, bucket).filter((row) => inRange(row, range));
      if (range.oldestFirst !== true) found.reverse();
      return structuredClone(found.slice(0, range.limit));
    },
    count: async (table, bucket) => sorted(table, bucket).length,
    all: async (table) => structuredClone([...rows(table).values()].sort((a, b) => (a.id < b.id ? -1 : 1))),
    demoIds: async (table) => [...rows(table).values()].filter((row) => row.demo === 1).map((row) => row.id),
    clear: async (table) => void tables.set(table, new Map()),
  };
}
