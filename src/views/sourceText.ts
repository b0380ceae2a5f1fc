import { GERMAN_SOURCE_WORDS } from "../diet/data/sourceWords.js";
import type { Formats } from "../text/formats.js";
import { tableLanguage } from "./tableLanguage.js";

/** A source of the diet tables as a reader of this language finds it; published titles stay as they were published. */
export function sourceText(source: string, formats: Formats): string {
  if (tableLanguage(formats) === "en") return source;
  return GERMAN_SOURCE_WORDS.reduce((text, [english, german]) => text.replaceAll(english, german), source);
}
