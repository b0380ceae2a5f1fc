/** The kitchen card. It brings the card's tables along: load it with them. */
import { CARD_LANGUAGES, kitchenCard, type CardLanguage, type CardLineKind } from "../diet/kitchenCard.js";
import type { DietProfile } from "../diet/profile.js";
import type { Words } from "../text/catalogue.js";
import type { OptionView } from "./plateHomeView.js";

/** What is shown to the staff, in their language. */
export interface KitchenCardView {
  readonly heading: string;
  readonly back: string;
  readonly languages: { readonly label: string; readonly options: readonly OptionView[] };
  /** BCP 47 tag of the card's sentences. */
  readonly lang: string;
  readonly title: string;
  readonly lines: readonly { readonly kind: CardLineKind; readonly text: string; readonly grave: boolean }[];
  readonly note: string;
  readonly empty: string | null;
  readonly print: string;
}

const GRAVE: readonly CardLineKind[] = ["allergy", "coeliac"];

/** Words of the card; its own language is not the app's. */
export function kitchenCardView(
  profile: DietProfile,
  language: CardLanguage,
  words: Words<"common" | "plate">,
): KitchenCardView {
  const { card: text } = words.text.plate;
  const card = kitchenCard(profile, language);
  const names = (id: CardLanguage) => new Intl.DisplayNames(id, { type: "language" }).of(id) ?? id;
  return {
    heading: text.title,
    back: words.text.common.back,
    languages: {
      label: text.language,
      options: CARD_LANGUAGES.map((id) => ({ id, label: names(id), chosen: id === language })),
    },
    // Only the allergens of the Japanese card are in Japanese; its sentences are English.
    lang: language === "ja" ? "en" : language,
    title: card.title,
    lines: card.lines.map((line) => ({ ...line, grave: GRAVE.includes(line.kind) })),
    note: card.note,
    empty: card.lines.length === 0 ? text.empty : null,
    print: text.print,
  };
}
