/** The words in the person's language: those of the first screen at once, all others when they are loaded. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import {
  LANGUAGES,
  type Catalogue,
  type FirstCatalogue,
  type LanguageId,
  type LaterCatalogue,
  type Words,
} from "../text/catalogue.js";
import { first as english } from "../text/en/first.js";
import { untilHere } from "./pieces.js";

export interface SpokenWords {
  /** The language that is shown: English where the wanted one cannot be loaded. */
  readonly language: ReadonlySignal<LanguageId>;
  readonly firstWords: ReadonlySignal<Words<keyof FirstCatalogue>>;
  /** All words. @throws {RangeError} if read before `loadAll` has ended */
  readonly words: ReadonlySignal<Words>;
  /** Loads what is said of this language, then shows it: no screen is ever without its words. */
  speak(language: LanguageId): Promise<void>;
  /** Loads the words of all screens. */
  loadAll(): Promise<void>;
}

interface Spoken {
  readonly language: LanguageId;
  readonly first: FirstCatalogue;
  readonly later: LaterCatalogue | null;
}

const FIRST: Readonly<Record<LanguageId, () => Promise<FirstCatalogue>>> = {
  en: () => Promise.resolve(english),
  de: async () => (await import("../text/de/first.js")).first,
};
const LATER: Readonly<Record<LanguageId, () => Promise<LaterCatalogue>>> = {
  en: async () => (await import("../text/en/later.js")).later,
  de: async () => (await import("../text/de/later.js")).later,
};

export function createSpokenWords(timeZone: string): SpokenWords {
  const spoken = signal<Spoken>({ language: "en", first: english, later: null });
  let wanted: LanguageId = "en";
  let isAllWanted = false;
  const formats = computed(() => {
    const locale = LANGUAGES.find(({ id }) => id === spoken.value.language)?.locale ?? "en-GB";
    return { locale, timeZone };
  });

  async function load(language: LanguageId): Promise<Spoken> {
    const [first, later] = await Promise.all([FIRST[language](), isAllWanted ? LATER[language]() : null]);
    return { language, first, later };
  }

  async function loadOrKeep(asked: LanguageId): Promise<Spoken> {
    const { later } = spoken.value;
    // English words would be as far away.
    if (isAllWanted && later === null) return untilHere(() => load(asked));
    // No network, and not kept offline yet: English until the next start, or what is spoken already.
    return load(asked)
      .catch(() => load("en"))
      .catch(() => spoken.value);
  }

  async function show(): Promise<void> {
    const { language, later } = spoken.value;
    if (wanted === language && (later !== null || !isAllWanted)) return;
    const asked = wanted;
    const loaded = await loadOrKeep(asked);
    if (asked !== wanted || (isAllWanted && loaded.later === null)) await show();
    else spoken.value = loaded;
  }

  return {
    language: computed(() => spoken.value.language),
    firstWords: computed(() => ({ text: spoken.value.first, formats: formats.value })),
    words: computed(() => ({ text: whole(spoken.value), formats: formats.value })),
    speak: (language) => {
      wanted = language;
      return show();
    },
    loadAll: () => {
      isAllWanted = true;
      return show();
    },
  };
}

function whole({ first, later }: Spoken): Catalogue {
  if (later === null) throw new RangeError("a screen speaks before its words are loaded");
  return { ...first, ...later };
}
