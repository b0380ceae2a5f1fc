// A backup out and in, and the end of everything. Expected values are counted by hand.
import { signal } from "@preact/signals";
import { afterEach, describe, expect, it, vi } from "vitest";
import { backupFile, readBackupFile } from "../../src/app/you/backupFile.js";
import { createLostNotice } from "../../src/app/lostNotice.js";
import { createDataControl } from "../../src/app/you/dataControl.js";
import { createImportControl } from "../../src/app/you/importControl.js";
import { err, ok } from "../../src/kernel/result.js";
import { writeBackup } from "../../src/meals/backup.js";
import { fingerprintOf } from "../../src/meals/fingerprint.js";
import { newMeal } from "../../src/meals/meal.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import { ACTIVE_NOSE_ID } from "../../src/store/rows.js";
import { sha256 } from "../../src/store/sha256.js";
import type { Store } from "../../src/store/store.js";
import { ENGLISH } from "../browser/gallery/fixtures/words.js";
import { memoryPorts, NOW, settle, until } from "./mealsPorts.js";

const AT = new Date(NOW).toISOString();
const LATER = new Date(NOW + 60_000).toISOString();
const CHOSEN = { demoNose: false, noProfile: false };
const meal = (id: string, dish: string, changedAt = AT) => ({ ...newMeal(id, AT), dish, changedAt });
const PHOTO = { id: "p", mime: "image/jpeg", bytes: Uint8Array.of(0, 255, 7, 128), addedAt: AT };

async function storeWith(...dishes: string[]): Promise<Store> {
  const store = createMemoryStore();
  await store.save({ meals: dishes.map((dish) => meal(dish, dish)) });
  return store;
}

async function fileOf(store: Store, withPhotos = true): Promise<File> {
  const file = await backupFile(store, AT, withPhotos);
  if (!file.ok) throw new Error(file.error.kind);
  return file.value;
}

const dishesIn = async (store: Store) => {
  const meals = await store.listMeals();
  return meals.ok ? meals.value.items.map(({ dish }) => dish).sort() : meals.error;
};

describe("a backup file", () => {
  it("comes back in on an empty phone and goes out again byte by byte the same, photos too", async () => {
    const store = await storeWith("broth", "filling");
    await store.save({ photos: [PHOTO] });
    await store.changeSettings({ theme: "dark", diet: { any: ["thing"] } }, AT);
    const file = await fileOf(store);
    expect(file.name).toBe("nidor-backup-2026-11-25t19-00.txt");
    const other = createMemoryStore();
    const control = createImportControl(other, () => CHOSEN);
    expect((await control.read(file)).ok).toBe(true);
    expect((await control.carryOut()).ok).toBe(true);
    expect(control.open.value).toBeNull();
    expect(await (await fileOf(other)).text()).toBe(await file.text());
    const photo = await other.getPhoto("p");
    expect(photo.ok && [...photo.value.bytes]).toEqual([0, 255, 7, 128]);
  });

  it("leaves the photos out when asked to", async () => {
    const store = await storeWith("broth");
    await store.save({ photos: [PHOTO] });
    const file = await fileOf(store, false);
    expect(file.name).toContain("no-photos");
    const contents = await readBackupFile(file);
    expect(contents.ok && contents.value.records.map(({ table }) => table)).toEqual(["meals"]);
  });

  it("is refused when one letter was changed, cut short, or of another kind", async () => {
    const text = await (await fileOf(await storeWith("broth"))).text();
    const read = async (changed: string) => {
      const contents = await readBackupFile(new File([changed], "backup.txt"));
      return contents.ok ? "read" : contents.error.kind;
    };
    expect(await read(text)).toBe("read");
    expect(await read(text.replace("broth", "brath"))).toBe("damaged");
    expect(await read(text.slice(0, -20))).toBe("damaged");
    expect(await read("dish;place\n")).toBe("notABackup");
    expect(await read("")).toBe("notABackup");
  });

  it("is refused by its size before it is read, and as damaged when it cannot be read at all", async () => {
    const huge = { size: 2 ** 31, text: () => Promise.reject(new Error("read")) } as unknown as File;
    const gone = { size: 10, text: () => Promise.reject(new Error("gone")) } as unknown as File;
    expect(await readBackupFile(huge)).toEqual(err({ kind: "tooLarge" }));
    expect(await readBackupFile(gone)).toEqual(err({ kind: "damaged" }));
  });
});

describe("bringing in a backup", () => {
  it("changes nothing until it is told to, and nothing when it is dropped", async () => {
    const here = await storeWith("mine");
    const control = createImportControl(here, () => CHOSEN);
    await control.read(await fileOf(await storeWith("theirs")));
    expect(control.open.value?.plan.fresh).toHaveLength(1);
    control.drop();
    expect(await dishesIn(here)).toEqual(["mine"]);
  });

  it("does what was chosen for each record that differs", async () => {
    const [here, there] = [createMemoryStore(), createMemoryStore()];
    await here.save({ meals: [meal("a", "mine a"), meal("b", "mine b"), meal("c", "mine c")] });
    await there.save({ meals: [meal("a", "theirs a"), meal("b", "theirs b"), meal("c", "theirs c")] });
    const control = createImportControl(here, () => CHOSEN);
    await control.read(await fileOf(there));
    control.choose("meals", "a", "keepMine");
    control.choose("meals", "b", "takeTheirs");
    control.choose("meals", "c", "keepBoth");
    control.choose("meals", "c", "burnIt");
    control.choose("nowhere", "c", "keepMine");
    await control.carryOut();
    expect(await dishesIn(here)).toEqual(["mine a", "mine c", "theirs b", "theirs c"]);
  });

  it("plans anew when something is written meanwhile, and holds on to the choices already made", async () => {
    const [here, there] = [createMemoryStore(), createMemoryStore()];
    await here.save({ meals: [meal("a", "mine a")] });
    await there.save({ meals: [meal("a", "theirs a", LATER), meal("b", "theirs b")] });
    const control = createImportControl(here, () => CHOSEN);
    await control.read(await fileOf(there));
    control.choose("meals", "a", "keepMine");
    await here.save({ meals: [meal("b", "mine b", LATER)] });
    await until(() => control.open.value?.plan.differing.length === 2);
    expect(control.open.value?.plan.differing.map(({ choice }) => choice)).toEqual(["keepMine", "keepMine"]);
    await control.carryOut();
    expect(await dishesIn(here)).toEqual(["mine a", "mine b"]);
  });

  it("proposes the nose that the backup used where the one here is only the demo nose", async () => {
    const value = (noseId: string) => ({ noseId, changedAt: AT });
    const active = { table: "settings", id: ACTIVE_NOSE_ID, demo: false, changedAt: AT } as const;
    const text = await writeBackup({ writtenAt: AT, records: [{ ...active, value: value("own") }] }, sha256);
    const fingerprint = fingerprintOf({ value: value("demo") });
    const here: Store = {
      ...createMemoryStore(),
      existingRecords: () => Promise.resolve(ok([{ ...active, fingerprint }])),
    };
    const choice = async (demoNose: boolean) => {
      const control = createImportControl(here, () => ({ demoNose, noProfile: false }));
      await control.read(new File([text.ok ? text.value : ""], "backup.txt"));
      return control.open.value?.plan.differing[0]?.choice;
    };
    expect([await choice(false), await choice(true)]).toEqual(["keepMine", "takeTheirs"]);
  });

  it("keeps the person's own settings, but not in the place of lost ones", async () => {
    const [here, there] = [createMemoryStore(), createMemoryStore()];
    await here.changeSettings({ diet: null }, LATER);
    await there.changeSettings({ diet: { any: "thing" } }, AT);
    const file = await fileOf(there);
    const choices = async (notChosen: typeof CHOSEN) => {
      const control = createImportControl(here, () => notChosen);
      await control.read(file);
      return control.open.value?.plan.differing.map(({ choice }) => choice);
    };
    expect(await choices(CHOSEN)).toEqual(["keepMine"]);
    expect(await choices({ demoNose: true, noProfile: false })).toEqual(["keepMine"]);
    expect(await choices({ demoNose: false, noProfile: true })).toEqual(["takeTheirs"]);
  });

  it("keeps the plan open when the phone refuses, with nothing written", async () => {
    const here = await storeWith("mine");
    const refusing: Store = { ...here, applyImport: () => Promise.resolve(err({ kind: "quota" })) };
    const control = createImportControl(refusing, () => CHOSEN);
    await control.read(await fileOf(await storeWith("theirs")));
    expect(await control.carryOut()).toEqual(err({ kind: "quota" }));
    expect(control.open.value?.doing).toBe(false);
    expect(await dishesIn(here)).toEqual(["mine"]);
  });

  it("cannot be dropped or begun twice in the middle", async () => {
    const here = await storeWith("mine");
    const control = createImportControl(here, () => CHOSEN);
    await control.read(await fileOf(await storeWith("theirs")));
    const doing = control.carryOut();
    control.drop();
    expect(control.open.value?.doing).toBe(true);
    expect((await control.carryOut()).ok).toBe(false);
    expect((await doing).ok).toBe(true);
    expect(await dishesIn(here)).toEqual(["mine", "theirs"]);
  });
});

describe("the data page", () => {
  afterEach(() => vi.unstubAllGlobals());

  function pageOver(store: Store) {
    const told: string[] = [];
    let restarts = 0;
    const nothing = { load: () => Promise.resolve() };
    const toasts: string[] = [];
    const lost = createLostNotice({ wasLost: true });
    lost.look();
    const page = createDataControl(
      {
        ports: memoryPorts(store),
        noses: { ...nothing, active: signal({ kind: "none" }) },
        diet: { hasProfile: signal(true) },
        drafts: nothing,
        samples: nothing,
        preferences: { ...nothing, profileLost: signal(false), words: signal(ENGLISH) },
        toasts: { show: (text: string) => toasts.push(text) },
        lost,
        reminder: { rest: () => Promise.resolve() },
        tellStoreError: ({ kind }: { kind: string }) => told.push(kind),
        dropDemo: () => store.removeDemo(),
      } as unknown as Parameters<typeof createDataControl>[0],
      () => {
        restarts += 1;
      },
    );
    return { page, told, toasts, lost, restarts: () => restarts };
  }

  it("counts what is kept, and again when that changes", async () => {
    const store = await storeWith("broth");
    await store.save({ photos: [PHOTO] });
    const { page } = pageOver(store);
    await until(() => page.counting.value.kind === "counted");
    expect(page.counting.value).toMatchObject({ facts: { meals: 1, photos: 1, sniffs: 0, hasDemo: false } });
    await store.save({ meals: [meal("x", "filling")], demo: true });
    await until(() => page.counting.value.kind === "counted" && page.counting.value.facts.meals === 2);
    expect(page.counting.value).toMatchObject({ facts: { hasDemo: true } });
    page.close();
  });

  it("says what the store refused instead of counting nothing", async () => {
    const store: Store = {
      ...createMemoryStore(),
      countMeals: () => Promise.resolve(err({ kind: "closed" })),
    };
    const { page } = pageOver(store);
    await until(() => page.counting.value.kind === "failed");
    page.close();
  });

  it("tells how many records came in, and that lost data are back", async () => {
    const { page, toasts, lost } = pageOver(createMemoryStore());
    expect(lost.shown.value).toBe(true);
    const backup = await backupFile(await storeWith("broth", "filling"), AT, true);
    if (!backup.ok) throw new Error("no backup");
    page.calls.onFile(backup.value);
    await until(() => page.importing.open.value !== null);
    await page.carryOut();
    expect(toasts).toEqual(["2 records came in."]);
    expect(lost.shown.value).toBe(false);
    page.close();
  });

  it("deletes everything only after both the sheet and the box, and starts anew", async () => {
    const store = await storeWith("broth");
    const { page, restarts } = pageOver(store);
    page.calls.onErase("now");
    page.calls.onErase("open");
    page.calls.onErase("now");
    await settle();
    expect(await dishesIn(store)).toEqual(["broth"]);
    page.calls.onEraseSure(true);
    page.calls.onErase("close");
    page.calls.onErase("now");
    await settle();
    expect(await dishesIn(store)).toEqual(["broth"]);
    page.calls.onErase("open");
    expect(page.erase.value).toEqual({ sure: false });
    page.calls.onEraseSure(true);
    page.calls.onErase("now");
    await until(() => restarts() === 1);
    expect(await dishesIn(store)).toEqual([]);
    page.close();
  });

  it("does not start anew when the phone refused to delete", async () => {
    const store = await storeWith("broth");
    const refusing: Store = { ...store, deleteEverything: () => Promise.resolve(err({ kind: "aborted" })) };
    const { page, told, restarts } = pageOver(refusing);
    page.calls.onErase("open");
    page.calls.onEraseSure(true);
    page.calls.onErase("now");
    await until(() => told.length === 1);
    expect(told).toEqual(["aborted"]);
    expect(restarts()).toBe(0);
    page.close();
  });

  it("counts a backup as the last one only if the person took it", async () => {
    const kept = new Map<string, string>();
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    const closes = () => Promise.reject(new DOMException("closed", "AbortError"));
    const shared: File[] = [];
    const shares = ({ files }: { files: File[] }) => Promise.resolve(void shared.push(...files));
    let share: (data: { files: File[] }) => Promise<void> = closes;
    vi.stubGlobal("navigator", {
      canShare: () => true,
      share: (data: { files: File[] }) => share(data),
    });
    const { page, toasts } = pageOver(await storeWith("broth"));
    page.calls.onSave(true);
    expect(page.saving.value).toBe(true);
    await settle();
    expect(page.saving.value).toBe(false);
    expect(kept.size).toBe(0);
    expect(toasts).toEqual([]);
    share = shares;
    page.calls.onSave(true);
    await until(() => kept.size === 1);
    expect([...kept.values()]).toEqual([AT]);
    await until(() => toasts.length === 1);
    expect(toasts).toEqual(["Backup done: 1 meal, 0 photos."]);
    const contents = await readBackupFile(shared[0] ?? new File([], ""));
    expect(contents).toMatchObject(ok({ writtenAt: AT }));
    page.close();
  });
});
