/** What the person chose: read once, changed through the store, told to the page. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { DEFAULT_PREFERENCES, type Preferences } from "../flows/preferences.js";
import type { ReadPreferences } from "../flows/readPreferences.js";
import type { Result } from "../kernel/result.js";
import type { Settings } from "../store/settings.js";
import type { StoreError } from "../store/storeError.js";
import { languageFor } from "../text/catalogue.js";
import { nowIso, type Ports } from "./ports.js";
import { createSpokenWords, type SpokenWords } from "./spokenWords.js";
import { untilHere } from "./pieces.js";

/** Kept in the place of a diet that is lost: it cannot be read either, so the loss is told until a new one is entered. */
const LOST_DIET = null;

/** How the app looked last: enough to draw the first screen before the store is open. */
export type Look = Pick<Preferences, "language" | "theme">;

export interface PreferencesControl extends Omit<SpokenWords, "speak"> {
  readonly preferences: ReadonlySignal<Preferences>;
  /** A kept diet could not be read: the person must be asked again. */
  readonly profileLost: ReadonlySignal<boolean>;
  /** Puts a look on the page; what the store has kept replaces it. */
  wear(look: Look): Promise<void>;
  load(): Promise<void>;
  /** `profile` is kept under the store's own name for it. */
  change(patch: Partial<Preferences>): Promise<Result<unknown, StoreError>>;
}

export function createPreferencesControl(ports: Ports): PreferencesControl {
  const read = signal<ReadPreferences>({ preferences: DEFAULT_PREFERENCES, profileLost: false });
  const preferences = computed(() => read.value.preferences);
  const { speak, ...spoken } = createSpokenWords(Intl.DateTimeFormat().resolvedOptions().timeZone);
  const loadReading = () => untilHere(() => import("./reading.js"));

  async function wear({ language, theme }: Look): Promise<void> {
    document.documentElement.dataset["theme"] = theme;
    await speak(languageFor(language === null ? navigator.languages : [language, ...navigator.languages]));
    document.documentElement.lang = spoken.language.value;
  }

  /** Nothing of the kept settings could be read, or the browser threw them away, and no diet was entered since. */
  let isAllLost = false;

  async function take(settings: Partial<Settings>): Promise<void> {
    const { readPreferences } = await loadReading();
    isAllLost &&= (settings.diet ?? LOST_DIET) === LOST_DIET;
    read.value = readPreferences(isAllLost ? { ...settings, diet: LOST_DIET } : settings);
    await wear(preferences.value);
  }

  async function load(): Promise<void> {
    const settings = await ports.store.getSettings();
    const kept: Partial<Settings> = settings.ok ? settings.value : {};
    isAllLost = !settings.ok || (ports.store.wasLost && kept.diet === undefined);
    await take(kept);
    // The browser says only once that it threw the data away: without this the next start would be silent.
    if (settings.ok && isAllLost) await ports.store.changeSettings({ diet: LOST_DIET }, nowIso(ports));
  }

  async function followStore(): Promise<void> {
    const settings = await ports.store.getSettings();
    if (settings.ok) await take(settings.value);
  }

  // Another tab's change must be known here, or the next change here would write an old profile over it.
  ports.store.subscribe(["settings"], () => void followStore());

  return {
    preferences,
    profileLost: computed(() => read.value.profileLost),
    ...spoken,
    wear,
    load,
    change: async ({ profile, ...rest }) => {
      const diet = profile ?? (isAllLost ? LOST_DIET : undefined);
      const patch = diet === undefined ? rest : { ...rest, diet };
      const changed = await ports.store.changeSettings(patch, nowIso(ports));
      if (!changed.ok) return changed;
      await take(changed.value);
      return changed;
    },
  };
}
