/**
 * What every store does, whatever is under it. Plain functions without a test runner, so that the same suite
 * also runs inside a real browser. Each gets an empty store; a failed fact throws.
 */
import { planImport } from "../../src/meals/importPlan.js";
import type { Store } from "../../src/store/store.js";
import { serialiseNose } from "../../src/nose/noseFile.js";
import { fillStore } from "./fillStore.js";
import { got, refused } from "./outcomes.js";
import { at, labelOf, mealAt, noseAt, photoOf, sniffAt } from "./records.js";

/** One fact of the contract. */
export interface ContractFact {
  readonly name: string;
  readonly check: (store: Store, another: () => Promise<Store>) => Promise<void>;
}

const fact = (name: string, check: ContractFact["check"]): ContractFact => ({ name, check });

/** Deep equality by sorted JSON; bytes count as arrays. */
export function same(actual: unknown, expected: unknown): void {
  const [left, right] = [stable(actual), stable(expected)];
  if (left !== right) throw new Error(`got ${left}, expected ${right}`);
}

function stable(value: unknown): string {
  return JSON.stringify(value, (_key, member: unknown) => {
    if (member instanceof Uint8Array) return [...member];
    if (typeof member !== "object" || member === null || Array.isArray(member)) return member;
    return Object.fromEntries(Object.entries(member).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

const ids = (list: { readonly items: readonly { readonly id: string }[] }) => list.items.map(({ id }) => id);

const mealFacts = [
  fact("a meal comes back as it went in, unknown keys too", async (store) => {
    const meal = { ...mealAt("m1", 5), mood: { tired: true } };
    await got(store.save({ meals: [meal] }));
    same(await got(store.getMeal("m1")), meal);
  }),
  fact("a meal that was never kept is not known", async (store) => {
    same(await refused(store.getMeal("m9")), { kind: "unknownId", table: "meals", id: "m9" });
  }),
  fact("pages run newest first, through meals of one and the same minute", async (store) => {
    const meals = [mealAt("a", 1), mealAt("c", 2), mealAt("b", 2), mealAt("d", 2), mealAt("e", 9)];
    await got(store.save({ meals }));
    const first = await got(store.listMeals({ limit: 2 }));
    same(ids(first), ["e", "d"]);
    const second = await got(store.listMeals({ limit: 2, after: first.next! }));
    same(ids(second), ["c", "b"]);
    const third = await got(store.listMeals({ limit: 2, after: second.next! }));
    same([ids(third), third.next], [["a"], null]);
    same(await got(store.countMeals()), 5);
  }),
  fact("a page may be bounded in time: from is included, before is not", async (store) => {
    await got(store.save({ meals: [mealAt("a", 1), mealAt("b", 2), mealAt("c", 3)] }));
    same(ids(await got(store.listMeals({ fromAt: at(1), beforeAt: at(3) }))), ["b", "a"]);
  }),
  fact("a page never leaves its bounds, wherever the cursor stands", async (store) => {
    await got(store.save({ meals: [mealAt("a", 1), mealAt("b", 2), mealAt("c", 3), mealAt("d", 4)] }));
    const after = { atMs: Date.parse(at(4)), id: "z" };
    same(ids(await got(store.listMeals({ beforeAt: at(3), after }))), ["b", "a"]);
    const early = { atMs: Date.parse(at(2)), id: "b" };
    same(ids(await got(store.listMeals({ fromAt: at(3), after: early }))), []);
  }),
  fact("a filter looks past more rows than it reads at a time", async (store) => {
    const meals = Array.from({ length: 600 }, (_, i) =>
      mealAt(`m${String(i).padStart(3, "0")}`, i, { dish: i % 299 === 0 ? "pickled plum" : "rice" }),
    );
    await got(store.save({ meals }));
    const found = await got(store.listMeals({ filter: (meal) => meal.dish === "pickled plum", limit: 2 }));
    same(ids(found), ["m598", "m299"]);
    same((await got(store.listMeals({ limit: 1000 }))).items.length, 600);
    const rest = await got(
      store.listMeals({ filter: (meal) => meal.dish === "pickled plum", limit: 2, after: found.next! }),
    );
    same([ids(rest), rest.next], [["m000"], null]);
  }),
  fact("an instant with another offset sorts by its moment", async (store) => {
    const early = mealAt("early", 0, { at: "2026-11-25T20:00:00+02:00" }); // 18:00 UTC
    await got(store.save({ meals: [early, mealAt("late", 30)] }));
    same(ids(await got(store.listMeals())), ["late", "early"]);
  }),
  fact("a deleted meal can be taken back, until it is purged", async (store) => {
    await got(store.save({ meals: [mealAt("m1", 1), mealAt("m2", 2)] }));
    await got(store.deleteMeal("m1", at(10)));
    same(ids(await got(store.listMeals())), ["m2"]);
    same(await got(store.purgeDeletedMeals(at(10))), 0); // deleted at, not before
    await got(store.restoreMeal("m1", at(11)));
    same(ids(await got(store.listMeals())), ["m2", "m1"]);
    same(await got(store.getMeal("m1")), { ...mealAt("m1", 1), changedAt: at(11) });
    await got(store.deleteMeal("m1", at(12)));
    same(await got(store.purgeDeletedMeals(at(13))), 1);
    same((await refused(store.restoreMeal("m1", at(14)))).kind, "unknownId");
  }),
  fact("the wrong shape is our own mistake, and nothing of the call is kept", async (store) => {
    const wrong = { ...mealAt("m2", 2), outcome: "devoured" } as never;
    let thrown: unknown;
    await store.save({ meals: [mealAt("m1", 1), wrong] }).catch((cause: unknown) => (thrown = cause));
    same(thrown instanceof RangeError, true);
    same(await got(store.countMeals()), 0);
  }),
];

const photoFacts = [
  fact("a photo keeps its bytes, and goes from its meals when it is deleted", async (store) => {
    const photo = photoOf("p1", [0, 255, 7, 128]);
    await got(
      store.save({
        photos: [photo, photoOf("p2", [])],
        meals: [mealAt("m1", 1, { photoIds: ["p1", "p2"] })],
      }),
    );
    same(await got(store.getPhoto("p1")), photo);
    same(
      (await got(store.listPhotos())).items.map(({ id, sizeBytes }) => [id, sizeBytes]),
      [
        ["p2", 0],
        ["p1", 4],
      ],
    );
    await got(store.deletePhotos(["p1"], at(20)));
    same((await refused(store.getPhoto("p1"))).kind, "unknownId");
    same(await got(store.getMeal("m1")), mealAt("m1", 1, { photoIds: ["p2"], changedAt: at(20) }));
  }),
  fact("what was kept does not change with what was handed in or out", async (store) => {
    const photo = photoOf("p1", [1, 2]);
    await got(store.save({ photos: [photo] }));
    photo.bytes[0] = 9;
    const out = await got(store.getPhoto("p1"));
    same(out.bytes, [1, 2]);
    out.bytes[1] = 9;
    same((await got(store.getPhoto("p1"))).bytes, [1, 2]);
  }),
  fact("a purge takes the photos that no other meal holds", async (store) => {
    const meals = [mealAt("m1", 1, { photoIds: ["p1", "p2"] }), mealAt("m2", 2, { photoIds: ["p2"] })];
    await got(store.save({ meals, photos: [photoOf("p1", [1]), photoOf("p2", [2])] }));
    await got(store.deleteMeal("m1", at(3)));
    await got(store.purgeDeletedMeals(at(4)));
    same(
      (await got(store.listPhotos())).items.map(({ id }) => id),
      ["p2"],
    );
    same((await got(store.getPhoto("p2"))).bytes, [2]);
  }),
];

const sniffFacts = [
  fact("raw sweeps never change: a second sniff of the same id is passed over", async (store) => {
    await got(store.save({ sniffs: [sniffAt("s1", 1)] }));
    await got(store.save({ sniffs: [{ ...sniffAt("s1", 9), dish: "another" }] }));
    same(await got(store.getSniff("s1")), sniffAt("s1", 1));
  }),
  fact("a sniff becomes a sample and stops being one; the sweeps stay as they were", async (store) => {
    const label = labelOf({ meat: "absent", egg: "present" }, 30);
    await got(store.save({ sniffs: [sniffAt("s1", 1), sniffAt("s2", 2)], labels: { s2: label } }));
    same(
      (await got(store.listSniffs())).items.map(({ sniffId }) => sniffId),
      ["s2", "s1"],
    );
    const [note] = (await got(store.listSniffs({ samplesOnly: true }))).items;
    same([note?.sniffId, note?.label, note?.demo], ["s2", label, false]);
    const { samples } = await got(store.readSamples());
    const { groups, plate, occasion, dish } = label;
    same(samples, [{ ...sniffAt("s2", 2), groups, plate, occasion, dish }]);
    same(await got(store.getSniff("s2")), sniffAt("s2", 2));
    await got(store.labelSniff("s2", null, at(40)));
    same((await got(store.readSamples())).samples, []);
    same((await refused(store.labelSniff("s9", null, at(40)))).kind, "unknownId");
  }),
  fact("sniffs are paged newest first, samples among the others", async (store) => {
    const sniffs = [1, 2, 3, 4, 5].map((minute) => sniffAt(`s${minute}`, minute));
    await got(store.save({ sniffs, labels: { s2: labelOf({}, 9), s4: labelOf({}, 9) } }));
    const first = await got(store.listSniffs({ limit: 3 }));
    const second = await got(store.listSniffs({ limit: 3, after: first.next! }));
    same(
      [...first.items, ...second.items].map(({ sniffId }) => sniffId),
      ["s5", "s4", "s3", "s2", "s1"],
    );
    same(second.next, null);
  }),
];

const noseFacts = [
  fact("a nose comes back number by number, and is not active before it is accepted", async (store) => {
    await got(store.addNose(noseAt("n1", 1), "e1", at(1)));
    same(await got(store.activeNose()), null);
    const back = await got(store.getNose("n1"));
    same(back.horizons[0]?.input.centre instanceof Float32Array, true);
    same(serialiseNose(back), serialiseNose(noseAt("n1", 1)));
  }),
  fact("noses are accepted, rejected and put back, and every step is kept", async (store) => {
    for (const [id, minutes] of [
      ["n1", 1],
      ["n2", 2],
      ["n3", 3],
    ] as const)
      await got(store.addNose(noseAt(id, minutes), `taught-${id}`, at(minutes)));
    await got(store.decideNose("n1", "accepted", "d1", at(10)));
    await got(store.decideNose("n2", "rejected", "d2", at(11)));
    same((await got(store.activeNose()))?.id, "n1");
    await got(store.decideNose("n3", "accepted", "d3", at(12)));
    same((await got(store.activeNose()))?.id, "n3");
    await got(store.decideNose("n1", "rolledBack", "d4", at(13)));
    const { noses, activeId, history } = await got(store.listNoses());
    same([activeId, noses.map(({ id }) => id)], ["n1", ["n3", "n2", "n1"]]);
    same(
      history.map(({ noseId, decision }) => `${noseId} ${decision}`),
      ["n1 taught", "n2 taught", "n3 taught", "n1 accepted", "n2 rejected", "n3 accepted", "n1 rolledBack"],
    );
    same((await refused(store.decideNose("n9", "accepted", "d5", at(14)))).kind, "unknownId");
    same((await got(store.listNoses())).history.length, 7);
  }),
  fact("a version of a nose is never written over", async (store) => {
    await got(store.addNose(noseAt("n1", 1), "e1", at(1)));
    await got(store.addNose({ ...noseAt("n1", 1), name: "another" }, "e2", at(2)));
    same((await got(store.getNose("n1"))).name, "nose n1");
    same((await got(store.listNoses())).history.length, 1);
  }),
  fact("the demo nose goes with the demo data, even while it is active", async (store) => {
    await got(store.addNose(noseAt("demo", 1), "e1", at(1), { demo: true }));
    await got(store.decideNose("demo", "accepted", "e2", at(2)));
    await got(store.removeDemo());
    same(await got(store.activeNose()), null);
    same(await got(store.listNoses()), { noses: [], activeId: null, history: [], setAside: [] });
  }),
];

const otherFacts = [
  fact("settings merge, and a key of a later version is kept", async (store) => {
    same(await got(store.getSettings()), { changedAt: null });
    await got(store.changeSettings({ language: "de", jurisdiction: "EU", layout: "wide" }, at(1)));
    const now = await got(store.changeSettings({ theme: "dark" }, at(2)));
    same(now, { language: "de", jurisdiction: "EU", layout: "wide", theme: "dark", changedAt: at(2) });
    same(await got(store.getSettings()), now);
  }),
  fact("settings changed from two sides at once both hold", async (store) => {
    await Promise.all([
      got(store.changeSettings({ language: "de" }, at(1))),
      got(store.changeSettings({ theme: "dark" }, at(1))),
    ]);
    const { language, theme } = await got(store.getSettings());
    same([language, theme], ["de", "dark"]);
  }),
  fact("sniffers, check jar readings and drafts come back in order", async (store) => {
    const sniffer = {
      id: "k1",
      name: "grey one",
      channels: [],
      firstSeenAt: at(1),
      lastSeenAt: at(2),
      note: "",
    };
    const reading = (id: string, minutes: number, snifferId = "k1") => ({
      id,
      at: at(minutes),
      snifferId,
      sniffId: "s1",
      score: 0.5,
    });
    const draft = { id: "d1", kind: "sniff", changedAt: at(3), value: { phase: "cleanAir", ohm: [[1]] } };
    const checkJar = [reading("r2", 2), reading("r1", 1), reading("r3", 3, "k2")];
    await got(store.save({ sniffers: [sniffer], checkJar, drafts: [draft] }));
    same((await got(store.listSniffers())).items, [sniffer]);
    same(ids(await got(store.listCheckJar("k1"))), ["r1", "r2"]);
    same((await got(store.listDrafts())).items, [draft]);
    await got(store.save({ doneDrafts: ["d1"], sniffs: [sniffAt("s1", 1)] }));
    same((await got(store.listDrafts())).items, []);
    await got(store.forgetSniffer("k1"));
    same((await got(store.listSniffers())).items, []);
  }),
  fact("listeners hear of the tables they asked for, until they stop listening", async (store) => {
    const heard: unknown[] = [];
    const stop = store.subscribe(["meals", "settings"], (tables) => heard.push(tables));
    await got(store.save({ meals: [mealAt("m1", 1)], sniffs: [sniffAt("s1", 1)] }));
    await got(store.save({ sniffs: [sniffAt("s2", 1)] }));
    stop();
    await got(store.deleteMeal("m1", at(2)));
    same(heard, [["meals"]]);
  }),
];

const wholeFacts = [
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
    same(ids(await got(store.listMeals())), ["m1"]);
    same(
      (await got(store.listSetAside())).map(({ table, id }) => [table, id]),
      [["meals", "m2"]],
    );
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

/** Every fact, in an order that does not matter. */
export const STORE_CONTRACT: readonly ContractFact[] = [
  ...mealFacts,
  ...photoFacts,
  ...sniffFacts,
  ...noseFacts,
  ...otherFacts,
  ...wholeFacts,
];
