import type { Caution, ClaimNote } from "./caution.js";
import { ALLERGEN_LISTS } from "./data/jurisdictions.js";
import { claimLimitsFor } from "./claimLimitsFor.js";
import { QUESTIONS, type QuestionId } from "./data/questions.js";
import type { SubstanceId } from "./data/substances.js";
import type { JurisdictionId } from "./jurisdiction.js";
import type { Level } from "./level.js";
import { DIETS, INTOLERANCES, type DietProfile } from "./profile.js";
import { standingIds } from "./standingIds.js";
import { substanceOf } from "./substanceTree.js";
import type { DietWords, StandingId } from "./words.js";

const levels: Readonly<Record<Level, string>> = {
  contains: "enthält",
  oftenContains: "enthält oft",
  mayContain: "kann enthalten",
  originUnclear: "Herkunft unklar",
};

const diets: DietWords["diets"] = {
  eatsFishNoMeat: "Fisch ja, Fleisch nein",
  ovoLactoVegetarian: "vegetarisch (mit Ei und Milch)",
  ovoVegetarian: "vegetarisch (mit Ei, ohne Milch)",
  lactoVegetarian: "vegetarisch (mit Milch, ohne Ei)",
  vegan: "vegan",
  halal: "halal",
  kosher: "koscher",
  ownList: "meine eigene Liste",
};

const groups: DietWords["groups"] = {
  meat: "Fleisch",
  fish: "Fisch",
  shellfish: "Meeresfrüchte",
  dairy: "Milchprodukte",
  egg: "Ei",
  nut: "Nüsse",
  soya: "Soja",
  alcohol: "Alkohol",
};

const intolerances: DietWords["intolerances"] = {
  lactose: "Laktose",
  fructose: "Fruktose",
  sorbitol: "Sorbit und andere Zuckeralkohole",
  histamine: "Histamin",
  gluten: "Gluten",
};

const jurisdictions: DietWords["jurisdictions"] = {
  EU: "Europäische Union",
  UK: "Vereinigtes Königreich",
  US: "Vereinigte Staaten",
  CA: "Kanada",
  AU_NZ: "Australien und Neuseeland",
  JP: "Japan",
  CODEX_2024: "Codex Alimentarius (2024)",
};

const substance = (id: SubstanceId): string => substanceOf(id)?.de ?? id;

const nameOf = (value: string): string => substanceOf(value)?.de ?? value;

function item({ kind, value }: Caution["item"]): string {
  if (kind === "allergy") return `deine Allergie: ${nameOf(value)}`;
  if (kind === "coeliac") return "deine Zöliakie";
  if (kind === "intolerance") {
    const known = INTOLERANCES.find((id) => id === value);
    return `deine Unverträglichkeit: ${known === undefined ? value : intolerances[known]}`;
  }
  if (kind === "diet") {
    const known = DIETS.find((id) => id === value);
    return `deine Ernährung: ${known === undefined ? value : diets[known]}`;
  }
  if (kind === "own") return `deine eigene Liste: ${value}`;
  const group = Object.entries(groups).find(([id]) => id === value);
  return `was du meidest: ${group?.[1] ?? value}`;
}

function caution({ level, substance: id, triggers, namesake }: Caution): string {
  const word = `„${triggers[0]?.word ?? ""}“`;
  if (id === null) return `${word} steht auf deiner eigenen Liste.`;
  const what = substance(id);
  if (namesake)
    return `${word} gehört hier wohl zu einem anderen Namen; ausschließen lässt sich ${what} daraus nicht.`;
  if (level === "originUnclear") return `${word}: Herkunft unklar – ${what}.`;
  return level === "mayContain" ? `${word} kann ${what} enthalten.` : `${word} ${levels[level]} ${what}.`;
}

function claim({ id, word }: ClaimNote, { kind }: Caution["item"]): string {
  const said = id === "without" ? `Die Karte sagt: ohne „${word}“.` : `Die Karte sagt: „${word}“.`;
  const grave = kind === "allergy" || kind === "coeliac" ? " Über Spuren sagt das nichts." : "";
  return `${said} Das ist behauptet, nicht bekannt.${grave}`;
}

function legal({ basis }: Caution, jurisdiction: JurisdictionId): string | null {
  if (basis.legal === null) return null;
  const { listed, itemNumber, itemText, force, exception } = basis.legal;
  const place = jurisdictions[jurisdiction];
  if (exception !== null) return `Muss dort nicht genannt werden (${place}): „${exception}“.`;
  if (listed === "notListed") {
    return `Nicht in der Allergenliste (${place}): Niemand muss es dort nennen, also frag nach.`;
  }
  const number = itemNumber === null ? "" : `, Nummer ${String(itemNumber)}`;
  const weight =
    force === "recommended" ? " (nur empfohlen)" : force === "national" ? " (jedem Land überlassen)" : "";
  const part = listed === "partly" ? "Nur zum Teil in" : "In";
  return `${part} der Allergenliste (${place})${number}${weight}: „${itemText ?? ""}“.`;
}

const claimLimits: DietWords["claimLimits"] = (touched, jurisdiction) =>
  claimLimitsFor(touched, jurisdiction).map(
    (row) => `„${row.claim}“ auf einem Etikett: ${row.limit.de}. Über eine offene Küche sagt das nichts.`,
  );

function list(jurisdiction: JurisdictionId): string {
  const { instrument, date, checkedOn } = ALLERGEN_LISTS[jurisdiction];
  return `Allergenliste (${jurisdictions[jurisdiction]}): ${instrument} (${date}; geprüft ${checkedOn}). Listen unterscheiden sich.`;
}

const note = ({ row }: Caution): string | null => row?.note?.de ?? null;

const MARKS = { SEEN: "gelesen", MEMORY: "aus dem Gedächtnis", "common practice": "übliche Praxis" } as const;

const provenance = ({ row, basis }: Caution): string =>
  [row, basis].flatMap((each) => (each === null ? [] : [`${each.source} (${MARKS[each.mark]})`])).join("; ");

const question = (id: QuestionId): string => QUESTIONS.find((row) => row.id === id)?.de ?? id;

const STANDING: Readonly<Record<Exclude<StandingId, "emergency">, string>> = {
  noSmell:
    "Allergene sind Eiweiße und haben keinen Geruch. Eine Riechprobe sieht keine Spuren, kein Gluten und keine Laktose und sagt nichts über Allergene.",
  steam: "Halte weder Gesicht noch Sniffer über ein dampfendes Gericht: Dampf kann Eiweiß tragen.",
  askAndTell:
    "Sag es immer dem Personal und frag immer nach: Lass dir die Zutaten schriftlich zeigen und sprich sie mit jemandem durch, der Bescheid weiß.",
  inDoubt: "Im Zweifel nicht essen.",
  adrenaline: "Trag dein verordnetes Adrenalin und deinen Notfallplan bei dir.",
  crossContact:
    "Gemeinsame Fritteusen, Grills, Bretter, Fett und Mehlstaub tragen Spuren. Speisekarten und Etiketten können falsch sein, Rezepte ändern sich.",
  noDevice: "Das ist kein Medizinprodukt. Es ist eine Hilfe, keine Garantie.",
};

const COUNTRIES = { AU: "Australien", NZ: "Neuseeland" } as const;

function emergency({ jurisdiction }: DietProfile): string {
  const numbers = ALLERGEN_LISTS[jurisdiction].emergency.numbers.map(({ number, country }) =>
    country === null ? number : `${number} in ${COUNTRIES[country]}`,
  );
  const where = numbers.length === 0 ? "" : ` (${jurisdictions[jurisdiction]}: ${numbers.join(" oder ")})`;
  return `Folge im Notfall deinem Notfallplan und ruf sofort die örtliche Notrufnummer an${where}. Such sie, bevor du isst.`;
}

/** German. */
export const DIET_WORDS_DE: DietWords = {
  levels,
  diets,
  groups,
  intolerances,
  severities: {
    mild: "leicht",
    serious: "ernst",
    lifeThreatening: "lebensbedrohlich",
    unknown: "nicht bekannt (gilt als lebensbedrohlich)",
  },
  jurisdictions,
  substance,
  item,
  caution,
  claim,
  legal,
  claimLimits,
  list,
  note,
  provenance,
  question,
  standing: (profile) =>
    standingIds(profile).map((id) => ({ id, text: id === "emergency" ? emergency(profile) : STANDING[id] })),
  nothingRecognised:
    "Kein Wort hier steht in der Tabelle. Das sagt nichts über das Gericht: Frag, was darin ist und wie es gemacht wurde.",
  help: "Warnungen kommen aus Wörtern, nicht vom Teller. Sie sind eine Hilfe, keine Garantie.",
};
