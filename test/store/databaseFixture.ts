/** A whole IndexedDB database as plain JSON, to keep one of every past version. */

/** One object store: its indexes and its rows. Bytes are written as { "$bytes": [...] }. */
interface FixtureTable {
  readonly keyPath: string;
  readonly indexes: Readonly<Record<string, string | string[]>>;
  readonly rows: readonly unknown[];
}

export interface DatabaseFixture {
  /** As IndexedDB counts: ten times the store's own. */
  readonly version: number;
  readonly tables: Readonly<Record<string, FixtureTable>>;
}

/** Reads a whole database. */
export async function dumpDatabase(factory: IDBFactory, name: string): Promise<DatabaseFixture> {
  const db = await settled(factory.open(name));
  const tables: Record<string, FixtureTable> = {};
  for (const table of [...db.objectStoreNames].sort()) {
    const store = db.transaction(table).objectStore(table);
    const indexes = [...store.indexNames].sort().map((index) => [index, store.index(index).keyPath]);
    tables[table] = {
      keyPath: String(store.keyPath),
      indexes: Object.fromEntries(indexes) as Record<string, string>,
      rows: (await settled(store.getAll())).map(withoutBytes),
    };
  }
  const { version } = db;
  db.close();
  return { version, tables };
}

/** Makes a database as it stood at the time of the fixture. */
export async function restoreDatabase(
  factory: IDBFactory,
  name: string,
  fixture: DatabaseFixture,
): Promise<void> {
  const request = factory.open(name, fixture.version);
  request.onupgradeneeded = () => {
    for (const [table, { keyPath, indexes, rows }] of Object.entries(fixture.tables)) {
      const store = request.result.createObjectStore(table, { keyPath });
      for (const [index, path] of Object.entries(indexes)) store.createIndex(index, path);
      for (const row of rows) store.put(withBytes(row));
    }
  };
  (await settled(request)).close();
}

interface Request<T> {
  result: T;
  error: unknown;
  addEventListener(type: string, listener: () => void): void;
}

function settled<T>(request: Request<T>): Promise<T> {
  return new Promise((settle, fail) => {
    request.addEventListener("success", () => settle(request.result));
    request.addEventListener("error", () => fail(request.error));
  });
}

function withoutBytes(value: unknown): unknown {
  if (value instanceof Uint8Array) return { $bytes: [...value] };
  return mapped(value, withoutBytes);
}

function withBytes(value: unknown): unknown {
  if (typeof value === "object" && value !== null && "$bytes" in value)
    return Uint8Array.from(value.$bytes as number[]);
  return mapped(value, withBytes);
}

function mapped(value: unknown, change: (member: unknown) => unknown): unknown {
  if (Array.isArray(value)) return value.map(change);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, change(member)]));
}
