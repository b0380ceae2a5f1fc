/** What the person chose: read once, changed through the store, told to the page. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { readPreferences, type Preferences } from "../flows/preferences.js";
import type { Result } from "../kernel/result.js";
import type { StoreError } from "../store/storeError.js";
import { languageFor, LANGUAGES, type Catalogue, type LanguageId, type Words } from "../text/catalogue.js";
import { en } from "../text/en.js";
import { nowIso, type Ports } from "./ports.js";

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

  async function take(settings: object): Promise<void> {
    read.value = readPreferences(settings);
    document.documentElement.lang = language.value;
    document.documentElement.dataset["theme"] = preferences.value.theme;
  }

  return {
    preferences,
    profileLost: computed(() => read.value.profileLost),
    language,
    words,
    load: async () => {
      const settings = await ports.store.getSettings();
      await take(settings.ok ? settings.value : {});
    },
    change: async ({ profile, ...rest }) => {
      const patch = profile === undefined ? rest : { ...rest, diet: profile };
      const changed = await ports.store.changeSettings(patch, nowIso(ports));
      if (changed.ok) await take(changed.value);
      return changed;
    },
  };
}
