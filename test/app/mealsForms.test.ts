// Forms over a store in memory. The dishes are invented.
import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";
import { draftRecord, recordFor, type FormSubject } from "../../src/app/meals/formRecord.js";
import { fieldTime, instantOf } from "../../src/app/meals/localTime.js";
import { draftOf, emptyDraft, mealWith } from "../../src/app/meals/mealDraft.js";
import { createMealForm, type MealForm } from "../../src/app/meals/mealForm.js";
import { mealFrom, originOf } from "../../src/app/meals/mealOrigin.js";
import { placesLike } from "../../src/app/meals/placesLike.js";
import { reactionDraftOf, reactionOf, withOnset, withSymptom } from "../../src/app/meals/reactionDraft.js";
import { createSmallForm, truthSchema } from "../../src/app/meals/smallForm.js";
import { saveTruth } from "../../src/app/meals/mealEdits.js";
import { groupsToAsk, truthDraftOf, truthOf, withTruth } from "../../src/app/meals/truthDraft.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { anyMeal } from "../meals/arbitraries.js";
import { plateFinding } from "../meals/findings.js";
import { got } from "../store/outcomes.js";
import { at, mealAt, sniffAt } from "../store/records.js";
import { fillingStore, memoryPorts, NOW, settle, until } from "./mealsPorts.js";

const zone = process.env["TZ"];
afterEach(() => {
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
});

describe("day and time in the form", () => {
  it.each([
    ["UTC", "2026-11-25T18:30:00.000Z", "2026-11-25T18:30"],
    ["Europe/Berlin", "2026-11-25T18:30:00.000Z", "2026-11-25T19:30"], // winter time: one hour ahead of UTC
    ["America/St_Johns", "2026-07-01T00:10:00.000Z", "2026-06-30T21:40"], // summer time: two and a half behind
    ["Pacific/Kiritimati", "2026-12-31T10:00:00.000Z", "2027-01-01T00:00"], // fourteen ahead
  ])("are those of the clock on the wall: %s", (timeZone, instant, field) => {
    process.env["TZ"] = timeZone;
    expect(fieldTime(instant)).toBe(field);
    expect(instantOf(field)).toBe(instant);
  });

  it.each(["", "yesterday", "2026-13-01T10:00", "25", "12026-01-01T10:00"])("refuse %j", (field) => {
    expect(instantOf(field)).toBeNull();
  });
});

describe("a meal in the form", () => {
  it("comes out as it went in, to the millisecond", () => {
    fc.assert(
      fc.property(anyMeal, (meal) => {
        const tidy = { dish: meal.dish.trim(), place: meal.place.trim(), note: meal.note.trim() };
        const claims = meal.claims.flatMap((claim) => claim.split("\n")).map((claim) => claim.trim());
        expect(mealWith(meal, draftOf(meal), meal.changedAt)).toEqual({
          ...meal,
          ...tidy,
          claims: claims.filter((claim) => claim !== ""),
        });
      }),
    );
  });

  it("keeps what the form does not know: the finding, the truth, the reaction", () => {
    const meal = mealFrom(mealAt("m1", 1), originOf(plateFinding, [], null, false));
    const edited = mealWith(meal, { ...draftOf(meal), dish: "leek broth" }, at(9));
    expect(edited).toEqual({ ...meal, dish: "leek broth", changedAt: at(9) });
  });

  it("is not taken without a day and time", () => {
    expect(mealWith(mealAt("m1", 1), { ...draftOf(mealAt("m1", 1)), when: "" }, at(2))).toBeNull();
  });
});

describe("the finding of a check in a meal", () => {
  const origin = originOf(
    plateFinding,
    [{ id: "c1", text: "“broth” often contains meat stock", because: "a rule" }],
    "nose-in-use",
    true,
  );

  it("is a copy, with the sniff, the nose that said it and the cautions as they were shown", () => {
    expect(origin).toEqual({
      sniffId: "s1",
      finding: plateFinding,
      noseId: "n1",
      cautions: [{ id: "c1", text: "“broth” often contains meat stock" }],
      practice: true,
    });
    expect(origin.finding).not.toBe(plateFinding);
    expect(origin.finding.groups[0]).not.toBe(plateFinding.groups[0]);
  });

  it("names the nose in use where it rests on no evidence, and none where there is none", () => {
    const bare = { ...plateFinding, groups: plateFinding.groups.map((group) => ({ ...group, basis: null })) };
    expect(originOf(bare, [], "nose-in-use", false).noseId).toBe("nose-in-use");
    expect(originOf(bare, [], null, false)).not.toHaveProperty("noseId");
  });
});

describe("a draft that waits", () => {
  const record = (subject: FormSubject, baseChangedAt: string | null = null) => ({
    subject,
    draft: emptyDraft(at(0)),
    origin: null,
    baseChangedAt,
  });

  it("comes back for its own form, out of many", () => {
    const subjects = [
      { kind: "edit", mealId: "m1" } as const,
      { kind: "edit", mealId: "m2" } as const,
      { kind: "check", sniffId: "s1" } as const,
      { kind: "new" } as const,
    ];
    const drafts = subjects.map((subject) => draftRecord(record(subject), at(1)));
    for (const subject of subjects.slice(0, 3)) expect(recordFor(subject, drafts)?.subject).toEqual(subject);
    expect(new Set(drafts.map(({ id }) => id)).size).toBe(4);
    // Newest first: after a reload, the unsaved finding is found under "new meal".
    expect(recordFor({ kind: "new" }, drafts)?.subject).toEqual({ kind: "check", sniffId: "s1" });
    expect(recordFor({ kind: "edit", mealId: "m3" }, drafts)).toBeNull();
  });

  it("is passed over if it is of another kind or damaged", () => {
    const sound = draftRecord(record({ kind: "new" }), at(1));
    expect(recordFor({ kind: "new" }, [{ ...sound, kind: "sniff" }])).toBeNull();
    expect(recordFor({ kind: "new" }, [{ ...sound, value: { subject: { kind: "new" } } }])).toBeNull();
  });
});

describe("the form over the store", () => {
  const start = { subject: { kind: "new" }, origin: null, sniff: null, filled: {} } as const;
  const isOpen = (form: MealForm) => form.open.value !== null && form.open.value !== "missing";
  const opened = async (form: MealForm) => {
    await until(() => isOpen(form));
    return form;
  };
  const shown = ({ open }: MealForm) => {
    if (open.value === null || open.value === "missing") throw new Error("not open");
    return open.value;
  };

  it("saves a meal by hand and lets its draft go", async () => {
    const ports = memoryPorts();
    const form = await opened(createMealForm(ports, start));
    form.set("dish", " clear broth ");
    form.set("claims", "menu says vegan\n\n");
    form.setOutcome("eaten");
    await until(() => shown(form).status === "editing");
    const meal = await form.save();
    expect(meal).toMatchObject({ dish: "clear broth", claims: ["menu says vegan"], outcome: "eaten" });
    expect(await got(ports.store.getMeal(meal?.id ?? ""))).toEqual(meal);
    expect((await got(ports.store.listDrafts())).items).toEqual([]);
    expect(await form.save()).toBeNull(); // a second tap makes no second meal
    expect(await got(ports.store.countMeals())).toBe(1);
  });

  it("goes on after a reload where it was left", async () => {
    const ports = memoryPorts();
    const form = await opened(createMealForm(ports, start));
    form.set("dish", "plum dumplings");
    form.close(); // the page closes before the hand has rested
    await settle();
    const again = await opened(createMealForm(ports, start));
    expect(shown(again).draft.dish).toBe("plum dumplings");
    await again.discard();
    expect(shown(await opened(createMealForm(ports, start))).draft.dish).toBe("");
  });

  it("keeps the finding of a check with its sniff in one go, and marks practice as a demo", async () => {
    const ports = memoryPorts();
    const origin = originOf(plateFinding, [], null, true);
    const filled = { dish: "clear broth", when: fieldTime(at(3)) };
    const subject = { kind: "check", sniffId: "s1" } as const;
    const form = await opened(createMealForm(ports, { subject, origin, sniff: sniffAt("s1", 3), filled }));
    await until(() => shown(form).status === "editing");
    const meal = await form.save();
    expect(meal).toMatchObject({ sniffId: "s1", noseId: "n1", finding: plateFinding, at: at(3) });
    expect((await got(ports.store.getSniff("s1"))).id).toBe("s1");
    expect((await got(ports.store.listSniffs())).items.map(({ demo }) => demo)).toEqual([true]);
    expect(await got(ports.store.removeDemo())).toBe(2);
    expect(await got(ports.store.countMeals())).toBe(0);
  });

  it("finds an unsaved finding again after a reload, when the check itself is gone", async () => {
    const ports = memoryPorts();
    const origin = originOf(plateFinding, [{ id: "c", text: "ask", because: null }], null, false);
    const subject = { kind: "check", sniffId: "s1" } as const;
    createMealForm(ports, { subject, origin, sniff: sniffAt("s1", 3), filled: { dish: "broth" } });
    await settle();
    expect((await got(ports.store.listDrafts())).items).toHaveLength(1);
    const again = await opened(createMealForm(ports, start));
    expect(shown(again)).toMatchObject({ subject, origin, resumed: true });
    const meal = await again.save();
    expect(meal).toMatchObject({ sniffId: "s1", dish: "broth", cautions: [{ id: "c", text: "ask" }] });
    expect((await got(ports.store.listDrafts())).items).toEqual([]);
  });

  it("tells that the phone is full, loses no word, and saves once there is room", async () => {
    let full = false;
    const ports = memoryPorts(fillingStore(() => full));
    const form = await opened(createMealForm(ports, start));
    full = true;
    form.set("dish", "mushroom filling");
    expect(await form.save()).toBeNull();
    expect(shown(form)).toMatchObject({ status: "failed", draft: { dish: "mushroom filling" } });
    full = false;
    expect((await form.save())?.dish).toBe("mushroom filling");
  });

  it("does not take back a truth that another page wrote in the meantime", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [mealAt("m1", 1)] }));
    const subject = { kind: "edit", mealId: "m1" } as const;
    const form = await opened(createMealForm(ports, { ...start, subject }));
    const truth = { groups: { egg: "present" }, source: "kitchen", knownAt: at(5), note: "" } as const;
    await got(saveTruth(ports, "m1", truth));
    form.set("note", "hot");
    expect(await form.save()).toMatchObject({ note: "hot", truth });
  });

  it("leaves a draft alone that is older than the meal it was made of", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [mealAt("m1", 1)] }));
    const subject = { kind: "edit", mealId: "m1" } as const;
    const form = await opened(createMealForm(ports, { ...start, subject }));
    form.set("note", "old words");
    form.close();
    await settle();
    await got(ports.store.save({ meals: [mealAt("m1", 1, { note: "newer words", changedAt: at(30) })] }));
    const again = await opened(createMealForm(ports, { ...start, subject }));
    expect(shown(again).draft.note).toBe("newer words");
  });

  it("says so when the meal to edit was deleted", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [mealAt("m1", 1)] }));
    await got(ports.store.deleteMeal("m1", at(2)));
    const form = createMealForm(ports, { ...start, subject: { kind: "edit", mealId: "m1" } });
    await until(() => form.open.value === "missing");
  });
});

describe("the truth in the form", () => {
  const meal: Meal = { ...newMeal("m1", at(1)), finding: plateFinding };

  it("asks for the groups of the finding first, then for what the person avoids", () => {
    expect(groupsToAsk(meal, ["fish", "meat"])).toEqual(["meat", "fish"]);
    expect(groupsToAsk(newMeal("m2", at(1)), [])).toEqual(FOOD_GROUPS);
  });

  it("keeps what is known and names nothing that was left open", () => {
    const draft = withTruth(withTruth(truthDraftOf(meal), "meat", "absent"), "fish", "unknown");
    expect(truthOf({ ...draft, source: "label", note: " no stock " }, at(9))).toEqual({
      groups: { meat: "absent" },
      source: "label",
      knownAt: at(9),
      note: "no stock",
    });
    expect(truthOf(truthDraftOf(meal), at(9))).toBeNull();
    expect(withTruth(draft, "meat", "safe")).toBe(draft);
  });

  it("waits in the store like any other form", async () => {
    const ports = memoryPorts();
    await got(ports.store.save({ meals: [meal] }));
    const kind = { name: "truth", schema: truthSchema, draftOf: truthDraftOf } as const;
    const form = createSmallForm(ports, "m1", kind);
    await until(() => form.open.value !== null);
    form.edit((draft) => withTruth(draft, "meat", "present"));
    form.close();
    await settle();
    const again = createSmallForm(ports, "m1", kind);
    await until(() => again.open.value !== null);
    expect(again.open.value).toMatchObject({ draft: { groups: { meat: "present" } } });
    const saved = await again.save((one, draft, done) =>
      saveTruth(ports, one.id, truthOf(draft, at(9)), done),
    );
    expect(saved?.ok).toBe(true);
    expect((await got(ports.store.listDrafts())).items).toEqual([]);
    expect((await got(ports.store.getMeal("m1"))).truth?.groups).toEqual({ meat: "present" });
  });
});

describe("the reaction in the form", () => {
  it("comes out as it went in, the person's own word too", () => {
    const reaction = {
      onsetMs: 47 * 60_000,
      symptoms: ["hives", "cold feet"],
      severity: 2,
      note: "mild rash",
    } as const;
    const draft = reactionDraftOf({ ...newMeal("m1", at(1)), reaction });
    expect(draft).toMatchObject({ symptoms: ["hives"], own: "cold feet", onset: "hour" });
    expect(reactionOf(draft, reaction)).toEqual(reaction);
  });

  it("takes another onset when one is chosen, and none for “not known”", () => {
    const reaction = { onsetMs: 47 * 60_000, symptoms: [], severity: 1, note: "" } as const;
    const draft = reactionDraftOf({ ...newMeal("m1", at(1)), reaction });
    expect(reactionOf(withOnset(draft, "hours"), reaction).onsetMs).toBe(3 * 3_600_000);
    expect(reactionOf(withOnset(draft, "unknown"), reaction)).not.toHaveProperty("onsetMs");
    expect(withOnset(draft, "never")).toBe(draft);
  });

  it("lists symptoms in the order of the form, whatever the order of the taps", () => {
    const none = reactionDraftOf(newMeal("m1", at(1)));
    const tapped = withSymptom(withSymptom(withSymptom(none, "faint", true), "mouth", true), "hives", true);
    expect(tapped.symptoms).toEqual(["mouth", "hives", "faint"]);
    expect(withSymptom(tapped, "hives", false).symptoms).toEqual(["mouth", "faint"]);
  });
});

it("offers places that what is typed could become, but not what stands there already", () => {
  const places = ["Stall 4", "Übersee", "stall 14", "Harbour", "Bridge", "Corner"];
  expect(placesLike(places, "STALL")).toEqual(["Stall 4", "stall 14"]);
  expect(placesLike(places, "uber")).toEqual(["Übersee"]);
  expect(placesLike(places, "stall 4")).toEqual([]);
  expect(placesLike(places, "")).toHaveLength(4);
  expect(NOW).toBe(Date.parse("2026-11-25T19:00:00Z"));
});
