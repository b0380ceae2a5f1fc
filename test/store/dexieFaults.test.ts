/** What goes wrong under a browser database, by the names of the Indexed Database API 3.0, and what the store says. */
import { forceCloseDatabase, IDBFactory, IDBKeyRange, IDBObjectStore } from "fake-indexeddb";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { openDexieStore } from "../../src/store/dexieStore.js";
import type { Store } from "../../src/store/store.js";
import { at, labelOf, mealAt, photoOf, sniffAt } from "./records.js";
import { got, refused } from "./outcomes.js";

let indexedDB: IDBFactory;
const opened: Store[] = [];

beforeEach(() => {
  indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
  opened.splice(0).forEach((store) => store.close());
});

const opening = (more = {}) => openDexieStore({ indexedDB, IDBKeyRange, ...more });

async function openTab(): Promise<Store> {
  const store = await got(opening());
  opened.push(store);
  return store;
}

/** A bare connection beside Dexie. Dexie's version 1 is 10 to the database. */
function bare(version?: number): Promise<IDBDatabase> {
  return new Promise((settle, fail) => {
    const request = indexedDB.open("nidor", version);
    request.onsuccess = () => settle(request.result as unknown as IDBDatabase);
    request.onerror = () => fail(request.error);
  });
}

/** Writes a row past every check, as a bad disk or a careless version would. */
async function plant(table: string, row: unknown): Promise<void> {
  const db = await bare();
  await new Promise((settle) => {
    const transaction = db.transaction([table], "readwrite");
    transaction.objectStore(table).put(row);
    transaction.oncomplete = settle;
  });
  db.close();
}

it("says that the storage is full, and keeps nothing of the write that did not fit", async () => {
  const store = await openTab();
  await got(store.save({ meals: [mealAt("m1", 1)] }));
  const put = IDBObjectStore.prototype.put;
  let writes = 0;
  vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (this: IDBObjectStore, value, key) {
    const request = put.call(this, value, key);
    writes += 1;
    // Section 5.6: a transaction that cannot be committed for want of space is aborted with this error.
    if (writes === 2)
      (this.transaction as unknown as { _abort(name: string): void })._abort("QuotaExceededError");
    return request;
  });
  const meals = [mealAt("m2", 2), mealAt("m3", 3), mealAt("m4", 4)];
  expect(await refused(store.save({ meals }))).toEqual({ kind: "quota" });
  vi.restoreAllMocks();
  expect((await got(store.listMeals())).items.map(({ id }) => id)).toEqual(["m1"]);
  await got(store.save({ meals }));
  expect(await got(store.countMeals())).toBe(4);
});

it("says that the browser gave a write up, and keeps nothing of it", async () => {
  const store = await openTab();
  const put = IDBObjectStore.prototype.put;
  vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (this: IDBObjectStore, value, key) {
    const request = put.call(this, value, key);
    if (this.name === "meals") this.transaction.abort();
    return request;
  });
  expect(await refused(store.save({ sniffs: [sniffAt("s1", 1)], meals: [mealAt("m1", 1)] }))).toEqual({
    kind: "aborted",
  });
  vi.restoreAllMocks();
  expect((await got(store.listSniffs())).items).toEqual([]);
});

it("asks for durability on the disk for every write", async () => {
  const transaction = vi.spyOn((await bare()).constructor.prototype as IDBDatabase, "transaction");
  indexedDB = new IDBFactory();
  const store = await openTab();
  transaction.mockClear();
  await got(store.save({ meals: [mealAt("m1", 1)] }));
  await got(store.deleteMeal("m1", at(2)));
  const writes = transaction.mock.calls.filter(([, mode]) => mode === "readwrite");
  expect(writes).toHaveLength(2);
  expect(writes.map(([, , options]) => options)).toEqual([
    { durability: "strict" },
    { durability: "strict" },
  ]);
});

it("has no place to keep anything where there is no IndexedDB, or it is forbidden", async () => {
  expect(await refused(openDexieStore())).toEqual({ kind: "unavailable" }); // Node has none
  const forbidden = {
    open: () => {
      throw new DOMException("no", "SecurityError");
    },
  };
  expect(await refused(opening({ indexedDB: forbidden }))).toEqual({ kind: "unavailable" });
});

it("does not touch a database that a newer version wrote", async () => {
  (await bare(20)).close();
  expect(await refused(opening())).toEqual({ kind: "newerVersion" });
  (await bare(20)).close(); // still there, and nobody holds it
});

it("waits for a tab that holds an older database, and then says so", async () => {
  const old = await bare(1); // does not answer `versionchange`
  expect(await refused(opening({ blockedAfterMs: 20 }))).toEqual({ kind: "blockedUpgrade" });
  old.close();
  const store = await openTab();
  expect(await got(store.countMeals())).toBe(0);
});

it("opens when the older tab closes in time", async () => {
  const old = await bare(1);
  setTimeout(() => old.close(), 20);
  await openTab();
});

it("closes politely when a newer tab wants the database", async () => {
  const store = await openTab();
  const closed = vi.fn();
  store.onClosed(closed);
  const newer = await bare(20); // would wait for ever if the store held on
  expect(closed).toHaveBeenCalledTimes(1);
  expect(await refused(store.countMeals())).toEqual({ kind: "closed" });
  newer.close();
});

it("closes when the browser takes the database away", async () => {
  const tracked: IDBDatabase[] = [];
  const open = IDBFactory.prototype.open;
  vi.spyOn(IDBFactory.prototype, "open").mockImplementation(function (this: IDBFactory, ...args) {
    const request = open.apply(this, args);
    request.addEventListener("success", () => tracked.push(request.result as unknown as IDBDatabase));
    return request;
  });
  const store = await openTab();
  const closed = vi.fn();
  store.onClosed(closed);
  forceCloseDatabase(tracked[0] as never);
  await vi.waitFor(() => expect(closed).toHaveBeenCalledTimes(1));
  expect(await refused(store.save({ meals: [mealAt("m1", 1)] }))).toEqual({ kind: "closed" });
});

it("does not call a close of its own an accident", async () => {
  const store = await openTab();
  const closed = vi.fn();
  store.onClosed(closed);
  store.close();
  expect(closed).not.toHaveBeenCalled();
});

it("lets two tabs write, and each hear of the other", async () => {
  const [left, right] = [await openTab(), await openTab()];
  const heard: unknown[] = [];
  left.subscribe(["meals"], (tables) => heard.push(tables));
  await Promise.all([
    got(left.changeSettings({ language: "de" }, at(1))),
    got(right.changeSettings({ theme: "dark" }, at(1))),
  ]);
  expect(await got(left.getSettings())).toMatchObject({ language: "de", theme: "dark" });
  await got(right.save({ meals: [mealAt("m1", 1)] }));
  await vi.waitFor(() => expect(heard).toEqual([["meals"]]));
  expect((await got(left.listMeals())).items).toHaveLength(1);
});

it("hands a bad meal out as a report, keeps it apart, and shows all others", async () => {
  const store = await openTab();
  await got(store.save({ meals: [mealAt("m1", 1), mealAt("m3", 3)] }));
  const bad = { ...mealAt("m2", 2), outcome: "devoured" };
  await plant("meals", { id: "m2", bucket: "live", atMs: Date.parse(at(2)), demo: 0, value: bad });
  const page = await got(store.listMeals());
  expect(page.items.map(({ id }) => id)).toEqual(["m3", "m1"]);
  expect(page.setAside).toHaveLength(1);
  expect(page.setAside[0]).toMatchObject({ table: "meals", id: "m2" });
  expect(page.setAside[0]?.cause).toMatch(/^outcome: /);
  expect(await got(store.listSetAside())).toEqual(page.setAside);
  expect((await got(store.listMeals())).setAside).toEqual([]);
  expect(await refused(store.getMeal("m2"))).toMatchObject({ kind: "corrupt", id: "m2" });
});

it.each([
  ["sniffs", { id: "x", bucket: "all", atMs: 0, demo: 0, value: { ...sniffAt("x", 1), headspace: null } }],
  ["meals", { id: "x", bucket: "live", atMs: 0, demo: 0, value: "not even an object" }],
  [
    "settings",
    { id: "settings", bucket: "all", atMs: 0, demo: 0, value: { theme: "plaid", changedAt: null } },
  ],
  ["noses", { id: "x", bucket: "all", atMs: 0, demo: 0, value: { id: "x" } }],
] as const)("says corrupt for one bad record of %s, and keeps it in the backup", async (table, row) => {
  const store = await openTab();
  await plant(table, row);
  const before = await got(store.exportContents(at(1)));
  expect(before.records.map((record) => [record.table, record.id])).toEqual([
    ["setAside", `${table}:${row.id}`],
  ]);
  const read = {
    sniffs: () => store.getSniff("x"),
    meals: () => store.getMeal("x"),
    settings: () => store.getSettings(),
    noses: () => store.getNose("x"),
  }[table];
  expect(await refused<unknown>(read())).toMatchObject({ kind: "corrupt", table, id: row.id });
  expect(await got(store.exportContents(at(1)))).toEqual(before);
});

it("does not show a photo of which a part is missing", async () => {
  const store = await openTab();
  await got(store.save({ photos: [photoOf("p1", [1, 2, 3])] }));
  await plant("photoBytes", {
    id: "p1",
    bucket: "all",
    atMs: 0,
    demo: 0,
    value: { bytes: Uint8Array.of(1, 2) },
  });
  const error = await refused(store.getPhoto("p1"));
  expect(error).toMatchObject({ kind: "corrupt", table: "photoBytes", cause: "bytes: has 2 of 3 bytes" });
});

it("keeps bad settings apart when new ones are chosen", async () => {
  const store = await openTab();
  const value = { theme: "plaid", changedAt: null };
  await plant("settings", { id: "settings", bucket: "all", atMs: 0, demo: 0, value });
  expect(await got(store.changeSettings({ theme: "dark" }, at(1)))).toEqual({
    theme: "dark",
    changedAt: at(1),
  });
  expect(await got(store.listSetAside())).toMatchObject([{ table: "settings", id: "settings" }]);
});

it("brings back what was set aside once it can be read", async () => {
  const first = await openTab();
  const row = { id: "m1", bucket: "live", atMs: Date.parse(at(1)), demo: 0, value: mealAt("m1", 1) };
  const value = { table: "meals", id: "m1", cause: "an older version could not read it", row };
  await plant("setAside", { id: "meals:m1", bucket: "all", atMs: 0, demo: 0, value });
  expect(await refused(first.getMeal("m1"))).toMatchObject({ kind: "corrupt" });
  first.close();
  const second = await openTab();
  expect(await got(second.getMeal("m1"))).toEqual(mealAt("m1", 1));
  expect(await got(second.listSetAside())).toEqual([]);
});

it("teaches on, without the sample whose sweeps are damaged", async () => {
  const store = await openTab();
  const labels = { s1: labelOf({}, 5), s2: labelOf({}, 5) };
  await got(store.save({ sniffs: [sniffAt("s1", 1), sniffAt("s2", 2)], labels }));
  const value = { ...sniffAt("s1", 1), headspace: { atMs: [0], ohm: [[-1]] } };
  await plant("sniffs", { id: "s1", bucket: "all", atMs: 0, demo: 0, value });
  const read = await got(store.readSamples());
  expect(read.samples.map(({ id }) => id)).toEqual(["s2"]);
  expect(read.setAside).toMatchObject([{ table: "sniffs", id: "s1" }]);
  expect(await got(store.readSamples())).toMatchObject({ setAside: [] });
});

it("notices that the browser threw the database away, and not that it was never there", async () => {
  const marks = new Map<string, string>();
  const lossMark = {
    getItem: (key: string) => marks.get(key) ?? null,
    setItem: (key: string, value: string) => void marks.set(key, value),
  };
  const openMarked = async () => {
    const store = await got(opening({ lossMark }));
    store.close();
    return store.wasLost;
  };
  expect(await openMarked()).toBe(false); // the first time of all
  expect(await openMarked()).toBe(false);
  indexedDB = new IDBFactory();
  expect(await openMarked()).toBe(true);
  expect(await openMarked()).toBe(false);
  const forbidden = () => {
    throw new DOMException("no", "SecurityError");
  };
  const store = await got(opening({ lossMark: { getItem: forbidden, setItem: forbidden } }));
  expect(store.wasLost).toBe(false);
  store.close();
});
