import type { first } from "./en/first.js";
import type { later } from "./en/later.js";
import type { Formats } from "./formats.js";

/** The words of the first screen, which wait for nothing. */
export type FirstCatalogue = typeof first;
/** All others; they are loaded after the first screen stands. */
export type LaterCatalogue = typeof later;
/** Every word the user sees. English is the measure: another language has the same keys, or does not compile. */
export type Catalogue = FirstCatalogue & LaterCatalogue;

/** What a view needs to speak: the parts of the catalogue that it uses, and how to write numbers and dates. */
export interface Words<Part extends keyof Catalogue = keyof Catalogue> {
  readonly text: Pick<Catalogue, Part>;
  readonly formats: Formats;
}

/** Languages that are complete. Names are in their own language. */
export const LANGUAGES = [
  { id: "en", name: "English", locale: "en-GB" },
  { id: "de", name: "Deutsch", locale: "de-DE" },
] as const;
export type LanguageId = (typeof LANGUAGES)[number]["id"];

/** The best complete language for what a browser prefers, best first; English where none fits. */
export function languageFor(preferred: readonly string[]): LanguageId {
  const bases = preferred.map((tag) => tag.toLowerCase().split("-")[0]);
  const base = bases.find((candidate) => LANGUAGES.some(({ id }) => id === candidate));
  return LANGUAGES.find(({ id }) => id === base)?.id ?? "en";
}
