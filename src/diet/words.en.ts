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
  contains: "contains",
  oftenContains: "often contains",
  mayContain: "may contain",
  originUnclear: "origin unclear",
};

const diets: DietWords["diets"] = {
  eatsFishNoMeat: "fish yes, meat no",
  ovoLactoVegetarian: "vegetarian (with egg and milk)",
  ovoVegetarian: "vegetarian (with egg, no milk)",
  lactoVegetarian: "vegetarian (with milk, no egg)",
  vegan: "vegan",
  halal: "halal",
  kosher: "kosher",
  ownList: "my own list",
};

const groups: DietWords["groups"] = {
  meat: "meat",
  fish: "fish",
  shellfish: "shellfish",
  dairy: "milk products",
  egg: "egg",
  nut: "nuts",
  soya: "soya",
  alcohol: "alcohol",
};

const intolerances: DietWords["intolerances"] = {
  lactose: "lactose",
  fructose: "fructose",
  sorbitol: "sorbitol and other sugar alcohols",
  histamine: "histamine",
  gluten: "gluten",
};

const jurisdictions: DietWords["jurisdictions"] = {
  EU: "the European Union",
  UK: "the United Kingdom",
  US: "the United States",
  CA: "Canada",
  AU_NZ: "Australia and New Zealand",
  JP: "Japan",
  CODEX_2024: "the Codex Alimentarius (2024)",
};

const substance = (id: SubstanceId): string => substanceOf(id)?.en ?? id;

const nameOf = (value: string): string => substanceOf(value)?.en ?? value;

function item({ kind, value }: Caution["item"]): string {
  if (kind === "allergy") return `your allergy: ${nameOf(value)}`;
  if (kind === "coeliac") return "your coeliac disease";
  if (kind === "intolerance") {
    const known = INTOLERANCES.find((id) => id === value);
    return `your intolerance: ${known === undefined ? value : intolerances[known]}`;
  }
  if (kind === "diet") {
    const known = DIETS.find((id) => id === value);
    return `your diet: ${known === undefined ? value : diets[known]}`;
  }
  if (kind === "own") return `your own list: ${value}`;
  const group = Object.entries(groups).find(([id]) => id === value);
  return `what you avoid: ${group?.[1] ?? value}`;
}

function caution({ level, substance: id, triggers, namesake }: Caution): string {
  const word = `“${triggers[0]?.word ?? ""}”`;
  if (id === null) return `${word} is on your own list.`;
  const what = substance(id);
  if (namesake)
    return `${word} here is probably part of another name; ${what} cannot be ruled out from the words.`;
  return level === "originUnclear"
    ? `${word}: origin unclear – ${what}.`
    : `${word} ${levels[level]} ${what}.`;
}

function claim({ id, word }: ClaimNote, { kind }: Caution["item"]): string {
  const said = id === "without" ? `The menu says it is made without “${word}”.` : `The menu says “${word}”.`;
  const grave = kind === "allergy" || kind === "coeliac" ? " It is no statement about traces." : "";
  return `${said} That is claimed, not known.${grave}`;
}

function legal({ basis }: Caution, jurisdiction: JurisdictionId): string | null {
  if (basis.legal === null) return null;
  const { listed, itemNumber, itemText, force, exception } = basis.legal;
  const place = jurisdictions[jurisdiction];
  if (exception !== null) return `Exempt from being named in ${place}: “${exception}”.`;
  if (listed === "notListed")
    return `Not on the allergen list of ${place}: nobody has to name it there, so ask.`;
  const number = itemNumber === null ? "" : `, item ${String(itemNumber)}`;
  const weight =
    force === "recommended" ? " (recommended only)" : force === "national" ? " (left to each country)" : "";
  const part = listed === "partly" ? "Only some kinds of it are on" : "On";
  return `${part} the allergen list of ${place}${number}${weight}: “${itemText ?? ""}”.`;
}

const claimLimits: DietWords["claimLimits"] = (touched, jurisdiction) =>
  claimLimitsFor(touched, jurisdiction).map(
    (row) => `“${row.claim}” on a label: ${row.limit.en}. It says nothing about an open kitchen.`,
  );

function list(jurisdiction: JurisdictionId): string {
  const { instrument, date, checkedOn } = ALLERGEN_LISTS[jurisdiction];
  return `Allergen list of ${jurisdictions[jurisdiction]}: ${instrument} (${date}; checked ${checkedOn}). Lists differ.`;
}

const note = ({ row }: Caution): string | null => row?.note?.en ?? null;

const provenance = ({ row, basis }: Caution): string =>
  [row, basis].flatMap((each) => (each === null ? [] : [`${each.source} (${each.mark})`])).join("; ");

const question = (id: QuestionId): string => QUESTIONS.find((row) => row.id === id)?.en ?? id;

const STANDING: Readonly<Record<Exclude<StandingId, "emergency">, string>> = {
  noSmell:
    "Allergens are proteins and have no smell. A sniff cannot see traces, gluten or lactose, and says nothing about allergens.",
  steam: "Do not hold your face or the sniffer over a steaming dish: steam can carry protein.",
  askAndTell:
    "Always tell the staff and always ask: get the ingredients in writing, and talk them through with somebody who knows.",
  inDoubt: "If in doubt, do not eat it.",
  adrenaline: "Carry your prescribed adrenaline and your action plan.",
  crossContact:
    "Shared fryers, grills, boards, oil and flour dust carry traces. Menus and labels can be wrong, and recipes change.",
  noDevice: "This is no medical device. It is a help, not a guarantee.",
};

const COUNTRIES = { AU: "Australia", NZ: "New Zealand" } as const;

function emergency({ jurisdiction }: DietProfile): string {
  const numbers = ALLERGEN_LISTS[jurisdiction].emergency.numbers.map(({ number, country }) =>
    country === null ? number : `${number} in ${COUNTRIES[country]}`,
  );
  const where = numbers.length === 0 ? "" : ` (${jurisdictions[jurisdiction]}: ${numbers.join(" or ")})`;
  return `In an emergency follow your action plan and call the local emergency number at once${where}. Know it before you eat.`;
}

/** English. */
export const DIET_WORDS_EN: DietWords = {
  levels,
  diets,
  groups,
  intolerances,
  severities: {
    mild: "mild",
    serious: "serious",
    lifeThreatening: "life-threatening",
    unknown: "not known (treated as life-threatening)",
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
    "No word here is in the table. That says nothing about the dish: ask what is in it and how it was made.",
  help: "Cautions come from words, not from the plate. They are a help, not a guarantee.",
};
