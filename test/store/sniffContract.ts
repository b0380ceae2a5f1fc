import { serialiseNose } from "../../src/nose/noseFile.js";
import { fact, ids, same, type ContractFact } from "./contractFact.js";
import { got, refused } from "./outcomes.js";
import { at, labelOf, mealAt, noseAt, sniffAt } from "./records.js";

/** Sniffs and samples. */
export const sniffFacts: readonly ContractFact[] = [
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

/** Noses. */
export const noseFacts: readonly ContractFact[] = [
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

/** Settings, sniffers, check jar, drafts, listeners. */
export const otherFacts: readonly ContractFact[] = [
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
