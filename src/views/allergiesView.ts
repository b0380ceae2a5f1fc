/** Allergies, and the form of one. It brings the substance tables along: load it with them. */
import { SUBSTANCES, type AllergenId } from "../diet/data/substances.js";
import type { JurisdictionId, ListItem } from "../diet/jurisdiction.js";
import { legalStanding } from "../diet/legalStanding.js";
import { SEVERITIES, type DietProfile, type Severity } from "../diet/profile.js";
import { substanceNamed } from "../diet/profileItems.js";
import type { Words } from "../text/catalogue.js";
import { listText } from "../text/formats.js";
import type { OptionView } from "./plateHomeView.js";
import { substanceName } from "./profileItemName.js";
import { tableLanguage } from "./tableLanguage.js";

/** The allergies page. */
export interface AllergiesView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly steam: string;
  readonly items: readonly {
    /** Place in the profile, counted from 0. */
    readonly index: number;
    readonly name: string;
    readonly severity: string;
    readonly note: string;
    readonly editLabel: string;
    readonly grave: boolean;
  }[];
  readonly none: string | null;
  readonly add: string;
}

/** One allergy as a form. */
export interface AllergyFormView {
  readonly title: string;
  readonly allergen: {
    readonly label: string;
    readonly hint: string;
    readonly options: readonly OptionView[];
  };
  /** The field for a substance that is not in the list. */
  readonly own: { readonly label: string; readonly value: string; readonly fault: string | undefined } | null;
  readonly severity: { readonly label: string; readonly options: readonly OptionView[] };
  readonly note: { readonly label: string; readonly hint: string; readonly value: string };
  /** What the legal list says of it, and in which words. */
  readonly legal: string | null;
  readonly save: string;
  readonly cancel: string;
  readonly remove: string | null;
}

export interface AllergyDraft {
  /** An allergen's id, `OWN_ALLERGEN`, or "" before one is chosen. */
  readonly choice: string;
  readonly own: string;
  readonly severity: Severity;
  readonly note: string;
  readonly isNew: boolean;
}

export const OWN_ALLERGEN = "own";

type AllergyWords = Words<"common" | "finding" | "you">;

/** Words of the allergies page. */
export function allergiesView(profile: DietProfile, words: AllergyWords): AllergiesView {
  const { you: text } = words.text;
  return {
    title: text.allergiesTitle,
    back: text.back,
    text: text.allergiesText,
    steam: words.text.finding.steam,
    items: profile.allergies.map(({ allergen, severity, note }, index) => {
      const name = substanceName(allergen, words);
      return {
        index,
        name,
        severity: text.severities[severity],
        note,
        editLabel: text.allergyEdit(name),
        grave: severity === "lifeThreatening" || severity === "unknown",
      };
    }),
    none: profile.allergies.length === 0 ? text.allergyNone : null,
    add: text.allergyAdd,
  };
}

/** Words of the form of one allergy. */
export function allergyFormView(
  draft: AllergyDraft,
  jurisdiction: JurisdictionId,
  words: AllergyWords,
): AllergyFormView {
  const { allergyForm: text, severities } = words.text.you;
  const named = chosenAllergen(draft);
  return {
    title: text.title,
    allergen: { label: text.allergen, hint: text.allergenHint, options: allergenOptions(draft, words) },
    own:
      draft.choice === OWN_ALLERGEN
        ? {
            label: text.ownLabel,
            value: draft.own,
            fault: draft.own.trim() === "" ? text.ownFault : undefined,
          }
        : null,
    severity: {
      label: text.severity,
      options: SEVERITIES.map((id) => ({ id, label: severities[id], chosen: id === draft.severity })),
    },
    note: { label: text.note, hint: text.noteHint, value: draft.note },
    legal: named === null ? null : legalLine(named, jurisdiction, words),
    save: text.save,
    cancel: words.text.common.cancel,
    remove: draft.isNew ? null : text.remove,
  };
}

/** What the draft would put into the profile; null while nothing is named. */
export function chosenAllergen({ choice, own }: Pick<AllergyDraft, "choice" | "own">): string | null {
  if (choice === "") return null;
  if (choice !== OWN_ALLERGEN) return choice;
  return own.trim() === "" ? null : own.trim();
}

const isAllergen = (row: (typeof SUBSTANCES)[number]): boolean => "allergen" in row;

/** Is this one of the tables' allergens, rather than the person's own word? */
export const isKnownAllergen = (allergen: string): allergen is AllergenId =>
  SUBSTANCES.some((row) => row.id === allergen && isAllergen(row));

function allergenOptions({ choice }: AllergyDraft, words: AllergyWords): OptionView[] {
  const { allergyForm: text } = words.text.you;
  const collator = new Intl.Collator(words.formats.locale);
  const known = SUBSTANCES.filter(isAllergen)
    .map(({ id }) => ({ id: String(id), label: substanceName(id, words), chosen: id === choice }))
    .sort((left, right) => collator.compare(left.label, right.label));
  const none = { id: "", label: "–", chosen: choice === "" };
  return [none, ...known, { id: OWN_ALLERGEN, label: text.own, chosen: choice === OWN_ALLERGEN }];
}

function legalLine(allergen: string, jurisdiction: JurisdictionId, words: AllergyWords): string {
  const { allergyForm: text } = words.text.you;
  const list = words.text.you.jurisdictions[jurisdiction];
  const substance = isKnownAllergen(allergen) ? allergen : substanceNamed(allergen);
  const standing = substance === undefined ? undefined : legalStanding(jurisdiction, substance);
  if (standing?.item === undefined) return text.notListed(list);
  return text.listed(`${list}: ${itemWords(standing.item, words)}`);
}

/** The lists are kept in English, word for word; another language is told what the item covers. */
function itemWords({ text, covers }: ListItem, words: AllergyWords): string {
  if (tableLanguage(words.formats) === "en") return text;
  return listText(
    covers.map((substance) => substanceName(substance, words)),
    words.formats,
  );
}
