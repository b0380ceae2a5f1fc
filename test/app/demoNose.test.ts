// The demo nose of a fresh phone is put in place by two writes, and a page may close between them.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { createNoseControl } from "../../src/app/noseControl.js";
import { parseNose } from "../../src/nose/noseFile.js";
import { createTeachClient } from "../../src/worker/teachClient.js";
import { memoryPorts } from "./mealsPorts.js";

const TEXT = readFileSync(new URL("../../models/demo.nose.json", import.meta.url), "utf8");
const PARSED = parseNose(TEXT);
if (!PARSED.ok) throw new Error("the demo nose cannot be read");
const DEMO = PARSED.value;

const ports = { ...memoryPorts(), fetchText: () => Promise.resolve(TEXT) };

/** What a page that has just been opened has in use. */
async function inUse(store = memoryPorts().store) {
  const client = createTeachClient(() => {
    throw new Error("nothing is taught here");
  });
  const noses = createNoseControl({ ...ports, store }, client, "");
  await noses.load();
  return noses.current.value?.id ?? null;
}

it("is in use on a fresh phone", async () => {
  expect(await inUse()).toBe(DEMO.id);
});

it("comes into use where a page closed after it was kept and before it was taken", async () => {
  const { store } = memoryPorts();
  await store.addNose(DEMO, `${DEMO.id}-taught`, DEMO.taughtAt, { demo: true });
  expect(await inUse(store)).toBe(DEMO.id);
});

it("does not come back where a nose of one's own was kept, or one was decided on", async () => {
  const own = memoryPorts().store;
  await own.addNose({ ...DEMO, id: "own" }, "own-taught", DEMO.taughtAt);
  expect(await inUse(own)).toBeNull();
  const refused = memoryPorts().store;
  await refused.addNose(DEMO, `${DEMO.id}-taught`, DEMO.taughtAt, { demo: true });
  await refused.decideNose(DEMO.id, "rejected", "no", DEMO.taughtAt);
  expect(await inUse(refused)).toBeNull();
});
