/**
 * Keeps the database of the present version as a fixture, before the next version changes the tables:
 * `npx tsx test/store/writeFixture.ts`. A fixture that is there already is never written again.
 */
import { existsSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { DATABASE_VERSION } from "../../src/store/dexieEngine.js";
import { DATABASE_NAME, openDexieStore } from "../../src/store/dexieStore.js";
import { dumpDatabase } from "./databaseFixture.js";
import { fillStore } from "./fillStore.js";
import { got } from "./outcomes.js";

const file = fileURLToPath(new URL(`../fixtures/store/v${DATABASE_VERSION}.json`, import.meta.url));
if (existsSync(file)) throw new Error(`version ${DATABASE_VERSION} has its fixture already`);
const indexedDB = new IDBFactory();
const store = await got(openDexieStore({ indexedDB, IDBKeyRange }));
await fillStore(store);
store.close();
writeFileSync(file, `${JSON.stringify(await dumpDatabase(indexedDB, DATABASE_NAME), undefined, 1)}\n`);
