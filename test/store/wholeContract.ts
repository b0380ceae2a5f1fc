import { planImport } from "../../src/meals/importPlan.js";
import { fact, ids, same, type ContractFact } from "./contractFact.js";
import { got, refused } from "./outcomes.js";
import { fillStore } from "./fillStore.js";
import { at, labelOf, mealAt, photoOf, sniffAt } from "./records.js";

/** The data as a whole. */
export const wholeFacts: readonly ContractFact[] = [
  fact("demo data go in one call, and nothing of the user's with them", async (store) => {
    same(await got(store.hasDemo()), false);
    await got(
      store.save({
        meals: [mealAt("m1", 1)],
        sniffs: [sniffAt("s1", 1), sniffAt("s2", 2)],
        labels: { s1: labelOf({}, 3) },
        photos: [photoOf("p1", [1])],
        demo: true,
      }),
    );
    await got(
      store.save({
        meals: [{ ...mealAt("m1", 1), note: "edited" }, mealAt("m2", 2)],
        sniffs: [sniffAt("s3", 3)],
      }),
    );
    same(await got(store.hasDemo()), true);
    same(await got(store.removeDemo()), 4); // one meal, two sniffs, one photo: counted by hand
    same(await got(store.hasDemo()), false);
    same(ids(await got(store.listMeals())), ["m2"]);
    same(
      (await got(store.listSniffs())).items.map(({ sniffId }) => sniffId),
      ["s3"],
    );
    same((await refused(store.getPhoto("p1"))).kind, "unknownId");
  }),
  fact("delete everything leaves an empty store that still works", async (store) => {
    await got(
      store.save({ meals: [mealAt("m1", 1)], photos: [photoOf("p1", [1])], sniffs: [sniffAt("s1", 1)] }),
    );
    await got(store.changeSettings({ language: "de" }, at(1)));
    await got(store.deleteEverything());
    same((await got(store.exportContents(at(2)))).records, []);
    await got(store.save({ meals: [mealAt("m2", 1)] }));
    same(ids(await got(store.listMeals())), ["m2"]);
  }),
  fact("a backup into an empty store makes the same backup again", async (store, another) => {
    await fillStore(store);
    const contents = await got(store.exportContents(at(50)));
    same(
      contents.records.filter(({ table }) => table === "meals").map(({ id }) => id),
      ["m1", "m2"],
    ); // m3 was deleted
    const other = await another();
    await got(other.applyImport(planImport(await got(other.existingRecords()), contents)));
    same(await got(other.exportContents(at(50))), contents);
    same((await got(other.listSniffs({ samplesOnly: true }))).items.length, 1);
    same(ids(await got(other.listMeals())), ["m2", "m1"]);
    same((await got(other.listCheckJar("k1"))).items.length, 1);
    same((await got(other.activeNose()))?.id, "n1");
    same(await got(other.getPhoto("p1")), await got(store.getPhoto("p1")));
    const again = planImport(await got(other.existingRecords()), contents);
    same([again.fresh, again.differing], [[], []]);
  }),
  fact("an import that fails half-way leaves everything as it was", async (store, another) => {
    await fillStore(store);
    const contents = await got(store.exportContents(at(50)));
    const other = await another();
    const plan = planImport([], contents);
    const spoilt = { ...plan, fresh: [...plan.fresh, { ...plan.fresh[0]!, id: undefined as never }] };
    await other.applyImport(spoilt).then(
      (outcome) => same(outcome.ok, false),
      (cause: unknown) => same(cause instanceof RangeError, true),
    );
    same((await got(other.exportContents(at(50)))).records, []);
  }),
  fact("an import sets aside what it cannot read, and brings in the rest", async (store) => {
    const records = [
      { table: "meals", id: "m1", demo: false, changedAt: at(1), value: { ...mealAt("m1", 1) } },
      {
        table: "meals",
        id: "m2",
        demo: false,
        changedAt: at(1),
        value: { ...mealAt("m2", 1), outcome: "devoured" },
      },
      { table: "sniffs", id: "s1", demo: true, changedAt: null, value: { ...sniffAt("s1", 1) } },
    ] as const;
    await got(store.applyImport(planImport([], { writtenAt: at(2), records })));
    same(
      (await got(store.listSetAside())).map(({ table, id }) => [table, id]),
      [["meals", "m2"]],
    );
    same(ids(await got(store.listMeals())), ["m1"]);
    same(
      (await got(store.listSniffs())).items.map(({ sniffId, demo }) => [sniffId, demo]),
      [["s1", true]],
    );
  }),
  fact("a backup may leave the photos out", async (store) => {
    await fillStore(store);
    const tables = async (withoutPhotos: boolean) =>
      new Set((await got(store.exportContents(at(50), { withoutPhotos }))).records.map(({ table }) => table));
    same([(await tables(false)).has("photos"), (await tables(true)).has("photos")], [true, false]);
    same((await tables(true)).has("meals"), true);
  }),
  fact("a closed store says so", async (store) => {
    store.close();
    same(await refused(store.countMeals()), { kind: "closed" });
    same(await refused(store.save({ meals: [mealAt("m1", 1)] })), { kind: "closed" });
  }),
];
