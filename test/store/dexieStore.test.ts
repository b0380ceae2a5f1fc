import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { afterEach, describe, it } from "vitest";
import { openDexieStore } from "../../src/store/dexieStore.js";
import type { Store } from "../../src/store/store.js";
import { STORE_CONTRACT } from "./storeContract.js";

const open: Store[] = [];

async function freshStore(): Promise<Store> {
  const opened = await openDexieStore({ indexedDB: new IDBFactory(), IDBKeyRange });
  if (!opened.ok) throw new Error(opened.error.kind);
  open.push(opened.value);
  return opened.value;
}

afterEach(() => open.splice(0).forEach((store) => store.close()));

describe("the Dexie store over an IndexedDB in memory", () => {
  it.each(STORE_CONTRACT.map((fact) => [fact.name, fact] as const))("%s", async (_name, fact) =>
    fact.check(await freshStore(), freshStore),
  );
});
