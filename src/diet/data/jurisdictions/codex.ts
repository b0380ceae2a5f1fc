/** The allergen list of the Codex Alimentarius. */
import type { Jurisdiction, ListItem } from "../../jurisdiction.js";
import type { SubstanceId } from "../substances.js";

const LIST = {
  source:
    "FAO/WHO priority allergen list (Ad hoc Expert Consultation 2021-22), the basis of the CXS 1 revision",
  mark: "SEEN",
  where: "secondary quotation only: open the legal text before citing it",
} as const;

const national = (text: string, substance: SubstanceId): ListItem => ({
  n: null,
  key: text,
  text,
  force: "national",
  covers: [substance],
  source:
    "FAO/WHO Risk Assessment of Food Allergens Part 5 (2023) covers exactly these; that they form s.4.2.1.5 is MEMORY",
  mark: "SEEN",
  where: "openknowledge.fao.org 163bd3e3",
});

export const CODEX_LIST: Jurisdiction = {
  id: "CODEX_2024",
  name: "Codex Alimentarius, CXS 1-1985 as revised 2024",
  instrument: "CXS 1-1985 (rev. 2024), finalised at CCFL48 (27 Oct - 1 Nov 2024), sent to CAC47 (Nov 2024)",
  date: "revised 2024",
  checkedOn: "2026-11-25",
  items: [
    {
      n: 1,
      key: "cereals_gluten",
      text: "cereals containing gluten (wheat, rye, barley and hybrids; oats moved to the national list - MEMORY)",
      force: "mandatory",
      covers: ["glutenCereal"],
      notCovered: ["oats"],
      ...LIST,
    },
    {
      n: 2,
      key: "crustaceans",
      text: "crustacea",
      force: "mandatory",
      covers: ["crustacean"],
      ...LIST,
    },
    {
      n: 3,
      key: "eggs",
      text: "eggs",
      force: "mandatory",
      covers: ["egg"],
      ...LIST,
    },
    {
      n: 4,
      key: "fish",
      text: "fish",
      force: "mandatory",
      covers: ["fish"],
      ...LIST,
    },
    {
      n: 5,
      key: "milk",
      text: "milk",
      force: "mandatory",
      covers: ["milk"],
      ...LIST,
    },
    {
      n: 6,
      key: "peanuts",
      text: "peanuts",
      force: "mandatory",
      covers: ["peanut"],
      ...LIST,
    },
    {
      n: 7,
      key: "sesame",
      text: "sesame",
      force: "mandatory",
      covers: ["sesame"],
      ...LIST,
    },
    {
      n: 8,
      key: "tree_nuts",
      text: "specific tree nuts: almond, cashew, hazelnut, pecan, pistachio, walnut",
      force: "mandatory",
      covers: ["treeNut"],
      notCovered: ["brazilNut", "macadamia", "pineNut"],
      ...LIST,
    },
    national("soybeans", "soya"),
    national("celery", "celery"),
    national("lupin", "lupin"),
    national("mustard", "mustard"),
    national("buckwheat", "buckwheat"),
    national("oats", "oats"),
    national("brazil nut", "brazilNut"),
    national("macadamia", "macadamia"),
    national("pine nut", "pineNut"),
    {
      n: null,
      key: "sulphites",
      text: "10 mg/kg rule kept",
      force: "separateRule",
      covers: ["sulphites"],
      source: "CXS 1-1985 s.4.2.1.4, kept in the revision: value from memory",
      mark: "MEMORY",
      where: "memory",
    },
  ],
  rules: [
    {
      text: "CCFL48 'finalized a historical update of the section on allergens' SEEN at natlawreview.com 'codex-alimentarius-main-outcome-48th-committee-food-labelling-ccfl48'; the adopted list itself not seen here",
      source:
        "report on the 48th session of the Codex Committee on Food Labelling; the adopted list itself was not seen",
      mark: "SEEN",
    },
  ],
  traps: [
    {
      text: "Molluscs are not in the list; soya, celery, lupin, mustard and buckwheat are left to the nations.",
      source: "FAO/WHO Risk Assessment of Food Allergens Part 5 (2023)",
      mark: "SEEN",
    },
  ],
  emergency: { numbers: [], source: "emergency number, value from memory", mark: "MEMORY" },
};
