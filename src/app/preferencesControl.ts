/** What the person chose: read once, changed through the store, told to the page. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { readPreferences, type Preferences } from "../flows/preferences.js";
import type { Result } from "../kernel/result.js";
import type { Settings } from "../store/settings.js";
import type { StoreError } from "../store/storeError.js";
import { languageFor, LANGUAGES, type Catalogue, type LanguageId, type Words } from "../text/catalogue.js";
import { en } from "../text/en.js";
import { nowIso, type Ports } from "./ports.js";

/** Kept in the place of a diet that is lost: it cannot be read either, so the loss is told until a new one is entered. */
const LOST_DIET = null;

export interface PreferencesControl {
  readonly preferences: ReadonlySignal<Preferences>;
  /** A kept diet could not be read: the person must be asked again. */
  readonly profileLost: ReadonlySignal<boolean>;
  readonly language: ReadonlySignal<LanguageId>;
  readonly words: ReadonlySignal<Words>;
  load(): Promise<void>;
  /** `profile` is kept under the store's own name for it. */
  change(patch: Partial<Preferences>): Promise<Result<unknown, StoreError>>;
}

export function createPreferencesControl(ports: Ports): PreferencesControl {
  const read = signal(readPreferences({}));
  const preferences = computed(() => read.value.preferences);
  const language = computed(() => {
    const chosen = preferences.value.language;
    return languageFor(chosen === null ? navigator.languages : [chosen, ...navigator.languages]);
  });
  const catalogues = signal<Readonly<Partial<Record<LanguageId, Catalogue>>>>({ en });
  const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const words = computed<Words>(() => {
    const locale = LANGUAGES.find(({ id }) => id === language.value)?.locale ?? "en-GB";
    return { text: catalogues.value[language.value] ?? en, formats: { locale, timeZone } };
  });

  /** Nothing of the kept settings could be read, or the browser threw them away, and no diet was entered since. */
  let isAllLost = false;

  async function take(settings: Partial<Settings>): Promise<void> {
    isAllLost &&= (settings.diet ?? LOST_DIET) === LOST_DIET;
    read.value = readPreferences(isAllLost ? { ...settings, diet: LOST_DIET } : settings);
    document.documentElement.lang = language.value;
    document.documentElement.dataset["theme"] = preferences.value.theme;
    await loadCatalogue();
  }

  /** English comes with the app; another language is fetched when it is chosen. */
  async function loadCatalogue(): Promise<void> {
    if (language.value !== "de" || catalogues.value.de !== undefined) return;
    try {
      const { de } = await import("../text/de.js");
      catalogues.value = { ...catalogues.value, de };
    } catch {
      // No network, and not kept offline yet: English until the next start.
    }
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
    language,
    words,
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
