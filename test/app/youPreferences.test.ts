// What the person chose: quick changes, refused ones, other tabs, and a diet that is lost. Expected values are counted
// by hand.
import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createPreferencesControl } from "../../src/app/preferencesControl.js";
import { createPreferencesEditor } from "../../src/app/you/preferencesEditor.js";
import { withDiet } from "../../src/app/you/profileEdits.js";
import { emptyProfile } from "../../src/diet/profile.js";
import { DEFAULT_PREFERENCES, type Preferences } from "../../src/flows/preferences.js";
import { err, ok, type Result } from "../../src/kernel/result.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import type { Store } from "../../src/store/store.js";
import type { StoreError } from "../../src/store/storeError.js";
import { memoryPorts, NOW, settle } from "./mealsPorts.js";

const AT = new Date(NOW).toISOString();
const PROFILE = {
  ...emptyProfile("EU"),
  allergies: [{ allergen: "egg", severity: "serious" as const, note: "" }],
};
const CORRUPT: StoreError = { kind: "corrupt", table: "settings", id: "settings", cause: "theme" };

beforeEach(() => {
  vi.stubGlobal("document", { documentElement: { lang: "", dataset: {} } });
  vi.stubGlobal("navigator", { languages: ["en-GB"] });
});
afterEach(() => vi.unstubAllGlobals());

async function opened(store: Store) {
  const control = createPreferencesControl(memoryPorts(store));
  await control.load();
  return control;
}

describe("what the person chose", () => {
  it("keeps a profile so that the next start has it", async () => {
    const store = createMemoryStore();
    await (await opened(store)).change({ profile: PROFILE, theme: "dark" });
    const { preferences, profileLost } = await opened(store);
    expect(preferences.value.profile).toEqual(PROFILE);
    expect(preferences.value.theme).toBe("dark");
    expect(profileLost.value).toBe(false);
  });

  it("learns what another tab kept, and does not write its own older profile over it", async () => {
    const store = createMemoryStore();
    const [here, there] = [await opened(store), await opened(store)];
    await there.change({ profile: PROFILE });
    await settle();
    expect(here.preferences.value.profile.allergies).toEqual(PROFILE.allergies);
  });

  it("tells a diet that cannot be read, and goes on telling it until one is entered again", async () => {
    const store = createMemoryStore();
    await store.changeSettings({ diet: { allergies: "egg" } }, AT);
    const first = await opened(store);
    expect(first.profileLost.value).toBe(true);
    await first.change({ theme: "dark" });
    expect(first.profileLost.value).toBe(true);
    const next = await opened(store);
    expect(next.profileLost.value).toBe(true);
    await next.change({ profile: PROFILE });
    expect(next.profileLost.value).toBe(false);
    expect((await opened(store)).profileLost.value).toBe(false);
  });

  it("tells a loss where the settings as a whole cannot be read, also after a change to something else", async () => {
    const store = createMemoryStore();
    const unreadable: Store = { ...store, getSettings: () => Promise.resolve(err(CORRUPT)) };
    const first = await opened(unreadable);
    expect(first.profileLost.value).toBe(true);
    await first.change({ theme: "light" });
    expect(first.profileLost.value).toBe(true);
    expect((await opened(store)).profileLost.value).toBe(true);
  });

  it("tells at this start and at the next that the browser threw the data away", async () => {
    const store = createMemoryStore();
    expect((await opened({ ...store, wasLost: true })).profileLost.value).toBe(true);
    const next = await opened(store);
    expect(next.profileLost.value).toBe(true);
    await next.change({ profile: PROFILE });
    expect((await opened({ ...store, wasLost: true })).profileLost.value).toBe(false);
  });

  it("has nothing to tell on a fresh phone", async () => {
    expect((await opened(createMemoryStore())).profileLost.value).toBe(false);
  });

  it("keeps what it knows when a later reading fails", async () => {
    const store = createMemoryStore();
    let fails = false;
    const here = await opened({
      ...store,
      getSettings: () => (fails ? Promise.resolve(err(CORRUPT)) : store.getSettings()),
    });
    await here.change({ profile: PROFILE });
    fails = true;
    await store.changeSettings({ theme: "dark" }, AT);
    await settle();
    expect(here.preferences.value.profile).toEqual(PROFILE);
  });
});

/** Preferences whose writes end when the test says so. */
function slowPreferences() {
  const preferences = signal<Preferences>(DEFAULT_PREFERENCES);
  const writes: { patch: Partial<Preferences>; end: (error?: StoreError) => void }[] = [];
  const change = (patch: Partial<Preferences>) =>
    new Promise<Result<unknown, StoreError>>((resolve) => {
      writes.push({
        patch,
        end: (error) => {
          if (error === undefined) preferences.value = { ...preferences.value, ...patch };
          resolve(error === undefined ? ok(undefined) : err(error));
        },
      });
    });
  return { preferences, change, writes };
}

describe("changes on the pages of You", () => {
  it("shows a change at once and loses none of two quick ones", async () => {
    const slow = slowPreferences();
    const editor = createPreferencesEditor(slow, () => undefined);
    const first = editor.editProfile((now) => withDiet(now, "vegan", true));
    const second = editor.editProfile((now) => withDiet(now, "kosher", true));
    expect(editor.shown.value.profile.diets).toEqual(["vegan", "kosher"]);
    expect(slow.preferences.value.profile.diets).toEqual([]);
    slow.writes[0]?.end();
    await settle();
    slow.writes[1]?.end();
    expect(await Promise.all([first, second])).toEqual([true, true]);
    expect(slow.preferences.value.profile.diets).toEqual(["vegan", "kosher"]);
  });

  it("writes one at a time, and what came meanwhile in one piece", async () => {
    const slow = slowPreferences();
    const editor = createPreferencesEditor(slow, () => undefined);
    void editor.edit({ theme: "dark" });
    void editor.edit({ theme: "light" });
    void editor.edit({ acceptedMissRate: 0.05 });
    expect(slow.writes).toHaveLength(1);
    slow.writes[0]?.end();
    await settle();
    expect(slow.writes.map(({ patch }) => patch)).toEqual([
      { theme: "dark" },
      { theme: "light", acceptedMissRate: 0.05 },
    ]);
  });

  it("takes a refused change off the screen and says why", async () => {
    const slow = slowPreferences();
    const told: string[] = [];
    const editor = createPreferencesEditor(slow, ({ kind }) => told.push(kind));
    const edited = editor.editProfile((now) => withDiet(now, "vegan", true));
    slow.writes[0]?.end({ kind: "quota" });
    expect(await edited).toBe(false);
    expect(editor.shown.value.profile.diets).toEqual([]);
    expect(told).toEqual(["quota"]);
    const again = editor.edit({ theme: "dark" });
    slow.writes[1]?.end();
    expect(await again).toBe(true);
    expect(slow.writes[1]?.patch).toEqual({ theme: "dark" });
  });
});
