import { describe, it } from "vitest";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import { STORE_CONTRACT } from "./storeContract.js";

describe("the memory store", () => {
  it.each(STORE_CONTRACT.map((fact) => [fact.name, fact] as const))("%s", (_name, fact) =>
    fact.check(createMemoryStore(), async () => createMemoryStore()),
  );
});
