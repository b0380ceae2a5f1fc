import type { Formats } from "../text/formats.js";

/** The diet tables speak English and German; whoever reads another language gets their English. */
export function tableLanguage({ locale }: Formats): "en" | "de" {
  return locale.toLowerCase().startsWith("de") ? "de" : "en";
}
