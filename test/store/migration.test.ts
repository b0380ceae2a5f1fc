/** Every database that a past version left on a phone opens, and holds what it held. */
import { readdirSync, readFileSync } from "node:fs";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { expect, it } from "vitest";
import { DATABASE_VERSION } from "../../src/store/dexieEngine.js";
import { DATABASE_NAME, openDexieStore } from "../../src/store/dexieStore.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import { dumpDatabase, restoreDatabase, type DatabaseFixture } from "./databaseFixture.js";
import { fillStore } from "./fillStore.js";
import { got } from "./outcomes.js";
import { at } from "./records.js";

const folder = new URL("../fixtures/store/", import.meta.url);
const fixtureOf = (version: number) =>
  JSON.parse(readFileSync(new URL(`v${version}.json`, folder), "utf8")) as DatabaseFixture;
const versions = Array.from({ length: DATABASE_VERSION }, (_, i) => i + 1);

async function openOld(version: number) {
  const indexedDB = new IDBFactory();
  await restoreDatabase(indexedDB, DATABASE_NAME, fixtureOf(version));
  return { indexedDB, store: await got(openDexieStore({ indexedDB, IDBKeyRange })) };
}

it("there is one fixture of each version, and of no other", () => {
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  expect(files.sort()).toEqual(versions.map((version) => `v${version}.json`).sort());
});

it.each(versions)("a database of version %i opens with everything in it", async (version) => {
  const { store } = await openOld(version);
  // The same records, written by the present version: what a migration has to arrive at.
  const fresh = createMemoryStore();
  await fillStore(fresh);
  expect(await got(store.exportContents(at(59)))).toEqual(await got(fresh.exportContents(at(59))));
  expect(await got(store.listSetAside())).toEqual([]);
  expect((await got(store.listMeals())).items.map(({ id }) => id)).toEqual(["m2", "m1"]);
  expect(await got(store.getPhoto("p1"))).toEqual(await got(fresh.getPhoto("p1")));
  expect(await got(store.hasDemo())).toBe(true);
  await got(store.restoreMeal("m3", at(58)));
  expect(await got(store.countMeals())).toBe(3);
  store.close();
});

it("the present version's fixture has the present tables: whoever changes them raises the version", async () => {
  const indexedDB = new IDBFactory();
  (await got(openDexieStore({ indexedDB, IDBKeyRange }))).close();
  const tablesOf = ({ version, tables }: DatabaseFixture) => ({
    version,
    tables: Object.entries(tables).map(([name, { keyPath, indexes }]) => [name, keyPath, indexes]),
  });
  expect(tablesOf(await dumpDatabase(indexedDB, DATABASE_NAME))).toEqual(
    tablesOf(fixtureOf(DATABASE_VERSION)),
  );
});

it.each(versions)(
  "a database of version %i is as the present version makes it, once opened",
  async (version) => {
    const { indexedDB, store } = await openOld(version);
    store.close();
    const opened = await dumpDatabase(indexedDB, DATABASE_NAME);
    const present = fixtureOf(DATABASE_VERSION);
    expect(opened.version).toBe(present.version);
    expect(Object.keys(opened.tables)).toEqual(Object.keys(present.tables));
  },
);
