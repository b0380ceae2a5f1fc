import { fact, ids, same, type ContractFact } from "./contractFact.js";
import { got, refused } from "./outcomes.js";
import { at, mealAt, photoOf } from "./records.js";

/** Meals. */
export const mealFacts: readonly ContractFact[] = [
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

/** Photos. */
export const photoFacts: readonly ContractFact[] = [
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
