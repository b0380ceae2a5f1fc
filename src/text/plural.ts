/** Picks the form of a word that goes with a count. */
export type PluralForm = (count: string, one: string, other: string) => string;

/**
 * The forms of one language.
 *
 * @param locale - BCP 47 tag of the catalogue
 * @returns a function of a whole count as it is written ("1", "1,234") and its two forms
 * @see Unicode CLDR, Language Plural Rules, through ECMA-402 Intl.PluralRules
 */
export function pluralIn(locale: string): PluralForm {
  const rules = new Intl.PluralRules(locale);
  return (count, one, other) => (rules.select(Number(count.replace(/\D/gu, ""))) === "one" ? one : other);
}
