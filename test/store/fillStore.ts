import type { Store } from "../../src/store/store.js";
import { got } from "./outcomes.js";
import { at, labelOf, mealAt, noseAt, photoOf, sniffAt } from "./records.js";

/** Puts something into every table: two meals of the user's, one of the user's deleted and one of the demo's. */
export async function fillStore(store: Store): Promise<void> {
  const sniffer = {
    id: "k1",
    name: "grey one",
    channels: [],
    firstSeenAt: at(1),
    lastSeenAt: at(2),
    note: "",
  };
  await got(
    store.save({
      meals: [mealAt("m1", 1, { photoIds: ["p1"] }), mealAt("m2", 2), mealAt("m3", 3)],
      photos: [photoOf("p1", [0, 1, 254, 255])],
      sniffs: [sniffAt("s1", 1), sniffAt("s2", 2)],
      labels: { s1: labelOf({ fish: "present" }, 4) },
      sniffers: [sniffer],
      checkJar: [{ id: "r1", at: at(2), snifferId: "k1", sniffId: "s2", score: 1.25 }],
      drafts: [{ id: "d1", kind: "sniff", changedAt: at(3), value: { half: true } }],
    }),
  );
  await got(store.save({ meals: [mealAt("demo", 1)], demo: true }));
  await got(store.deleteMeal("m3", at(4)));
  await got(store.deleteMeal("demo", at(4)));
  await got(store.changeSettings({ language: "de" }, at(5)));
  await got(store.addNose(noseAt("n1", 1), "e1", at(1)));
  await got(store.decideNose("n1", "accepted", "e2", at(6)));
}
