// What Meals does to the store: samples, sniffs, the review and the table.
import { signal } from "@preact/signals";
import { describe, expect, it } from "vitest";
import { claimReader } from "../../src/app/meals/claimDenies.js";
import { keepFinishedSniffs } from "../../src/app/meals/keepFinishedSniffs.js";
import { keepAsSample, sampleLabel, saveReaction, saveTruth } from "../../src/app/meals/mealEdits.js";
import { mealTable } from "../../src/app/meals/mealTable.js";
import { openMeal } from "../../src/app/meals/openMeal.js";
import { addressOf, monthsBack, periodOf, periodText, queryOf } from "../../src/app/meals/period.js";
import { createPhotoUrls } from "../../src/app/meals/photoUrls.js";
import { reviewedMeals } from "../../src/app/meals/reviewedMeals.js";
import { fitWithin } from "../../src/app/meals/scalePhoto.js";
import type { CheckState } from "../../src/flows/checkState.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import type { StoreError } from "../../src/store/storeError.js";
import { en } from "../../src/text/en.js";
import { found, plateFinding } from "../meals/findings.js";
import { VIRTUAL_SNIFFER_ID } from "../../src/virtual/virtualSnifferId.js";
import { got, refused } from "../store/outcomes.js";
import { at, mealAt, sniffAt } from "../store/records.js";
import { fillingStore, memoryPorts, settle, until } from "./mealsPorts.js";

const words = { text: en, formats: { locale: "en-GB", timeZone: "UTC" } };
const present = { groups: { meat: "present" }, source: "kitchen", knownAt: at(9), note: "" } as const;

describe("one meal", () => {
  it("keeps up with what other pages write, and goes when it is deleted", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [mealAt("m1", 1, { sniffId: "s1" })], sniffs: [sniffAt("s1", 1)] }));
    const open = openMeal(ports, "m1");
    await until(() => open.page.value.kind === "open");
    await got(saveTruth(ports, "m1", present));
    await until(() => open.page.value.kind === "open" && open.page.value.meal.truth !== null);
    await got(ports.store.labelSniff("s1", { ...labelFor("s1"), mealId: "m1" }, at(3)));
    await until(() => open.page.value.kind === "open" && open.page.value.sample === "kept");
    await got(ports.store.deleteMeal("m1", at(4)));
    await until(() => open.page.value.kind === "missing");
    open.close();
  });

  it("keeps how it felt without touching the rest", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [mealAt("m1", 1, { note: "hot" })] }));
    const reaction = { symptoms: ["hives"], severity: 1, note: "" } as const;
    expect(await got(saveReaction(ports, "m1", () => reaction))).toMatchObject({ note: "hot", reaction });
    expect((await refused(saveReaction(ports, "m9", () => reaction))).kind).toBe("unknownId");
  });
});

const labelFor = (sniffId: string) => ({
  groups: { meat: "present" } as const,
  plate: `plate-${sniffId}`,
  occasion: "evening-1",
  dish: "clear broth",
  keptAt: at(2),
});

describe("the sniff of a confirmed meal as a sample", () => {
  async function confirmed() {
    const ports = memoryPorts();
    const meal = mealAt("m1", 1, { sniffId: "s1", truth: present, dish: "bone broth" });
    await got(ports.store.save({ meals: [meal], sniffs: [sniffAt("s1", 1)] }));
    await got(keepAsSample(ports, meal));
    return { ports, meal };
  }

  it("carries the truth of the meal, the plate and the occasion of the sniff", async () => {
    const { ports } = await confirmed();
    expect(await sampleLabel(ports.store, "s1")).toMatchObject({
      groups: { meat: "present" },
      plate: "plate-s1",
      occasion: "evening-1",
      dish: "bone broth",
      mealId: "m1",
    });
    const { samples } = await got(ports.store.readSamples());
    expect(samples.map(({ groups }) => groups)).toEqual([{ meat: "present" }]);
  });

  it("follows the truth when it is corrected, and is none any more when nothing is known", async () => {
    const { ports } = await confirmed();
    await got(saveTruth(ports, "m1", { ...present, groups: { meat: "absent" } }));
    expect((await sampleLabel(ports.store, "s1"))?.groups).toEqual({ meat: "absent" });
    await got(saveTruth(ports, "m1", null));
    expect(await sampleLabel(ports.store, "s1")).toBeNull();
    expect((await got(ports.store.getSniff("s1"))).id).toBe("s1"); // the sweeps stay
  });

  it("does not follow where the label was given by hand", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [mealAt("m1", 1, { sniffId: "s1" })], sniffs: [sniffAt("s1", 1)] }));
    await got(ports.store.labelSniff("s1", labelFor("s1"), at(2)));
    await got(saveTruth(ports, "m1", { ...present, groups: { meat: "absent" } }));
    expect((await sampleLabel(ports.store, "s1"))?.groups).toEqual({ meat: "present" });
  });

  it("is told as being kept from the tap on, and as none again where it could not be written", async () => {
    const ports = memoryPorts();
    const meal = mealAt("m1", 1, { sniffId: "s1", truth: present });
    await got(ports.store.save({ meals: [meal], sniffs: [sniffAt("s1", 1)] }));
    const open = openMeal(ports, "m1");
    const sample = () => (open.page.value.kind === "open" ? open.page.value.sample : null);
    await until(() => sample() === "none");
    const kept = open.keepSample();
    expect(sample()).toBe("keeping");
    await got(kept);
    expect(sample()).toBe("kept");
    open.close();
    await got(ports.store.save({ meals: [mealAt("m2", 1, { sniffId: "s9", truth: present })] }));
    const gone = openMeal(ports, "m2");
    await until(() => gone.page.value.kind === "open");
    await refused(gone.keepSample());
    expect(gone.page.value).toMatchObject({ sample: "none" });
    gone.close();
  });

  it("is refused where the sweeps are gone or nothing is known", async () => {
    const ports = memoryPorts();
    expect((await refused(keepAsSample(ports, mealAt("m1", 1, { truth: present })))).kind).toBe("unknownId");
    const gone = mealAt("m1", 1, { truth: present, sniffId: "s9" });
    expect((await refused(keepAsSample(ports, gone))).kind).toBe("unknownId");
  });
});

describe("a finished check", () => {
  const done = (id: string, snifferId = "sniffer-1"): CheckState => ({
    phase: "done",
    sniff: { ...sniffAt(id, 1), sniffer: { ...sniffAt(id, 1).sniffer, id: snifferId } },
    finding: { ...plateFinding, sniffId: id },
  });
  const parts = (store = createMemoryStore()) => {
    const state = signal<CheckState>({ phase: "idle" });
    const told: StoreError[] = [];
    const purpose = signal<"plate" | "jar">("plate");
    const app = {
      check: { state, countdown: signal(null), begin: () => undefined, send: () => undefined },
      purpose,
      ports: memoryPorts(store),
      tellStoreError: (error: StoreError) => void told.push(error),
    };
    return { app, state, purpose, told, store };
  };
  const ids = async (store: ReturnType<typeof createMemoryStore>) =>
    (await got(store.listSniffs())).items.map(({ sniffId, demo }) => [sniffId, demo]);

  it("leaves its sniff in the store the moment the finding appears, saved as a meal or not", async () => {
    const { app, state, store } = parts();
    const stop = keepFinishedSniffs(app);
    state.value = done("s1");
    await settle();
    state.value = { phase: "idle" };
    // The sniffer says so itself: a practice sniff reopened from a draft, after a reload, is one still.
    state.value = done("s2", VIRTUAL_SNIFFER_ID);
    await settle();
    expect((await ids(store)).sort()).toEqual([
      ["s1", false],
      ["s2", true],
    ]);
    stop();
    state.value = done("s3");
    expect(await ids(store)).toHaveLength(2);
  });

  it("leaves the check jar's sniffs to the check jar", async () => {
    const { app, state, purpose, store } = parts();
    keepFinishedSniffs(app);
    purpose.value = "jar";
    state.value = done("s1");
    await settle();
    expect(await ids(store)).toEqual([]);
  });

  it("says so when the phone is full", async () => {
    const { app, state, told } = parts(fillingStore(() => true));
    keepFinishedSniffs(app);
    state.value = done("s1");
    await until(() => told.length === 1);
    expect(told).toEqual([{ kind: "quota" }]);
  });
});

describe("the meals that a review counts", () => {
  it("are those of real plates: what was practised says nothing of a real table", async () => {
    const store = createMemoryStore();
    const finding = found("meat", "smelled");
    const real = mealAt("m1", 1, { sniffId: "s1", finding });
    const byHand = mealAt("m2", 2);
    await got(store.save({ meals: [real, byHand], sniffs: [sniffAt("s1", 1)] }));
    const practised = mealAt("m3", 3, { sniffId: "s3", finding });
    await got(store.save({ meals: [practised], sniffs: [sniffAt("s3", 3)], demo: true }));
    expect((await got(reviewedMeals(store, null))).map(({ id }) => id)).toEqual(["m2", "m1"]);
  });
});

describe("a period", () => {
  const noon = (day: string) => Date.parse(`${day}T12:00`);

  it.each([
    [1, "2026-11-25", "2026-10-25"],
    [3, "2026-05-31", "2026-02-28"], // February has no 31st
    [12, "2028-02-29", "2027-02-28"], // nor a 29th in every year
    [1, "2026-01-15", "2025-12-15"],
  ])("goes back %i month(s) from %s to %s", (months, today, from) => {
    expect(monthsBack(months, noon(today))).toEqual({ from, upto: today });
  });

  it("holds its first and its last day whole", () => {
    const query = queryOf({ from: "2026-11-24", upto: "2026-11-25" });
    expect(query.fromAt).toBe(new Date(2026, 10, 24).toISOString());
    expect(query.beforeAt).toBe(new Date(2026, 10, 26).toISOString());
    expect(queryOf(null)).toEqual({});
  });

  it("finds its way through the address bar, and takes nonsense for all meals", () => {
    const period = { from: "2026-01-01", upto: "2026-03-31" };
    expect(periodOf(addressOf(period))).toEqual(period);
    for (const bad of [[], [""], ["2026-02-30", "2026-03-31"], ["2026-03-31", "2026-01-01"], ["x", "y"]])
      expect(periodOf(bad)).toBeNull();
    expect(addressOf(null)).toEqual([]);
  });

  it("is written as people write a stretch of days", () => {
    const text = periodText({ from: "2026-08-25", upto: "2026-11-25" }, "en-GB");
    expect(text.replace(/\s+/gu, " ")).toBe("25 Aug – 25 Nov 2026"); // CLDR, interval format of en-GB
  });
});

describe("the table for a spreadsheet", () => {
  const meal = mealAt("m1", 1, {
    dish: "=1+1",
    finding: found("meat", "not smelled", 0.25),
    truth: present,
    reaction: { onsetMs: 40 * 60_000, symptoms: ["hives", "cold feet"], severity: 2, note: "" },
    outcome: "partlyEaten",
  });
  const [header = "", line = ""] = mealTable([meal], words).split("\r\n");

  it("begins with the sign by which spreadsheets know UTF-8, and has a word for every column", () => {
    expect(header.startsWith("\uFEFFWhen,Dish,Place,")).toBe(true);
    const names = header.slice(1).split(",");
    expect(names).toHaveLength(16); // 6 + 3 for the one group + 7, counted by hand
    expect(names.filter((name) => name === "" || /^[a-z]+[A-Z]/.test(name))).toEqual([]);
    expect(new Set(names).size).toBe(16);
    expect(names.slice(6, 9)).toEqual([
      "Meat: Finding",
      "Meat: Probability",
      "Meat: What it turned out to be",
    ]);
  });

  it("says findings, truths, outcomes and symptoms in the person's words", () => {
    expect(line.split(",")).toEqual([
      at(1),
      "'=1+1", // no formula
      "stall 4",
      "",
      "",
      "partly eaten",
      "Not smelled",
      "0.25",
      "in it",
      "the kitchen",
      "",
      "40",
      "hives or itching skin; cold feet",
      "moderate",
      "",
      "",
    ]);
  });
});

describe("claims against food groups", () => {
  const denies = claimReader();
  const denied = (claim: string) =>
    ["meat", "fish", "shellfish", "dairy", "egg", "nut", "soya", "alcohol"].filter((group) =>
      denies(claim, group),
    );

  // What the words deny is common practice; ISO 23662:2021 for vegetarian and vegan.
  it.each([
    [en.plate.claimOptions.vegetarian, ["meat", "fish", "shellfish"]],
    [en.plate.claimOptions.vegan, ["meat", "fish", "shellfish", "dairy", "egg"]],
    [en.plate.claimOptions.noMeat, ["meat"]],
    [en.plate.claimOptions.noFish, ["fish"]],
    [en.plate.claimOptions.own, []],
    ["without shellfish", ["shellfish"]],
    ["without crustaceans", []], // mussels are shellfish too
    ["without gelatine", []],
    ["vegan on request", []],
    ["halal", []], // says how meat was slaughtered
    ["", []],
  ])("%j denies %j", (claim, groups) => {
    expect(denied(claim)).toEqual(groups);
  });
});

describe("the size of a kept photo", () => {
  it.each([
    [4000, 3000, 1600, 1200],
    [3000, 4000, 1200, 1600],
    [1600, 1600, 1600, 1600],
    [800, 600, 800, 600], // never made larger
    [10_000, 3, 1600, 1], // never less than a pixel
  ])("%i x %i becomes %i x %i", (width, height, widthPx, heightPx) => {
    expect(fitWithin(width, height, 1600)).toEqual({ widthPx, heightPx });
  });
});

describe("addresses of photos", () => {
  it("are made once each, shown when they come, and taken back when the page closes", async () => {
    const read: string[] = [];
    const urls = createPhotoUrls((id) => {
      read.push(id);
      return Promise.resolve(id === "gone" ? null : new Blob([id]));
    });
    expect(urls.urlOf("p1")).toBeUndefined();
    urls.urlOf("gone");
    urls.urlOf("p1");
    await until(() => urls.urlOf("p1") !== undefined);
    const url = urls.urlOf("p1") ?? "";
    expect(await (await fetch(url)).text()).toBe("p1");
    expect(read).toEqual(["p1", "gone"]);
    urls.close();
    await expect(fetch(url)).rejects.toThrow();
    urls.urlOf("p2");
    await settle();
    expect(read).toEqual(["p1", "gone"]);
  });
});
