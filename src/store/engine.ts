/**
 * The narrow port under the store: rows in tables, one index, transactions. `memoryEngine.ts` and
 * `dexieEngine.ts` fill it; what a meal or a nose is, the engine does not know.
 */
import type { Stored } from "./storeError.js";
import type { PageCursor, StoreTable } from "./storeTypes.js";

/** Tables as the engine keeps them. Photos and sniffs keep what is large apart from what a list shows. */
export const ENGINE_TABLES = [
  "meals",
  "photos",
  "photoBytes",
  "sniffs",
  "sniffNotes",
  "noses",
  "noseEvents",
  "settings",
  "sniffers",
  "checkJar",
  "drafts",
  "setAside",
] as const;
export type EngineTable = (typeof ENGINE_TABLES)[number];

/** One record with the fields of its index. The index is [bucket, atMs, id]. */
export interface Row {
  readonly id: string;
  /** What a list is made of, such as "live" or "deleted". */
  readonly bucket: string;
  readonly atMs: number;
  /** 1: made from demo data. A number, because IndexedDB has no index on booleans. */
  readonly demo: 0 | 1;
  readonly value: unknown;
}

/** Which rows of one bucket to read; `fromMs` is included, `beforeMs` is not. */
export interface RowRange {
  readonly fromMs?: number;
  readonly beforeMs?: number;
  /** Start after this row, in the direction of reading. */
  readonly after?: PageCursor;
  readonly limit?: number;
  readonly oldestFirst?: boolean;
}

/** What can be done inside a transaction. Await nothing else in there, or the browser ends it. */
export interface EngineTransaction {
  get(table: EngineTable, id: string): Promise<Row | undefined>;
  put(table: EngineTable, rows: readonly Row[]): Promise<void>;
  remove(table: EngineTable, ids: readonly string[]): Promise<void>;
  /** Rows of one bucket in the order of [atMs, id]; newest first if not told otherwise. */
  range(table: EngineTable, bucket: string, range?: RowRange): Promise<Row[]>;
  count(table: EngineTable, bucket: string): Promise<number>;
  /** In the order of ids. */
  all(table: EngineTable): Promise<Row[]>;
  demoIds(table: EngineTable): Promise<string[]>;
  clear(table: EngineTable): Promise<void>;
}

/** Rows with transactions. */
export interface Engine {
  /** Nothing was here when it was opened: not even empty tables. */
  readonly wasCreated: boolean;
  read<T>(tables: readonly EngineTable[], work: (tx: EngineTransaction) => Promise<T>): Stored<T>;
  /** Acknowledged only when it is on the disk. Listeners of `changed` hear of it afterwards. */
  write<T>(
    tables: readonly EngineTable[],
    changed: readonly StoreTable[],
    work: (tx: EngineTransaction) => Promise<T>,
  ): Stored<T>;
  subscribe(listener: (tables: readonly StoreTable[]) => void): () => void;
  onClosed(listener: () => void): void;
  close(): void;
}
