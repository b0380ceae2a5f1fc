import type { en } from "./en.js";
import type { Formats } from "./formats.js";

/** Every word the user sees. English is the measure: another language has the same keys, or does not compile. */
export type Catalogue = typeof en;

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
