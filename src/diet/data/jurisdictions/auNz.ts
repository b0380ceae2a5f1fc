/** The allergen list of Australia / New Zealand. */
import type { Jurisdiction } from "../../jurisdiction.js";

const LIST = {
  source: "Standard 1.2.3 / Schedule 9 as amended by P1044",
  mark: "SEEN",
  where: "legislation.gov.au F2021C00195 (start 25 Feb 2021)",
} as const;

export const AU_NZ_LIST: Jurisdiction = {
  id: "AU_NZ",
  name: "Australia / New Zealand",
  instrument:
    "Food Standards Code, Standard 1.2.3 and Schedule 9 (Proposal P1044, Plain English Allergen Labelling)",
  date: "25 February 2021; stock in trade until 25 February 2026",
  checkedOn: "2026-11-25",
  items: [
    {
      n: 1,
      key: "wheat",
      text: "wheat and hybridised strains whether or not they contain gluten",
      force: "mandatory",
      covers: ["wheat"],
      ...LIST,
    },
    {
      n: 2,
      key: "cereals_gluten",
      text: "oats, rye, barley and hybridised strains if they contain gluten",
      force: "mandatory",
      covers: ["oats", "rye", "barley"],
      ...LIST,
    },
    {
      n: 3,
      key: "crustaceans",
      text: "crustacea",
      force: "mandatory",
      covers: ["crustacean"],
      ...LIST,
    },
    {
      n: 4,
      key: "eggs",
      text: "egg",
      force: "mandatory",
      covers: ["egg"],
      ...LIST,
    },
    {
      n: 5,
      key: "fish",
      text: "fish",
      force: "mandatory",
      covers: ["fish"],
      ...LIST,
    },
    {
      n: 6,
      key: "milk",
      text: "milk",
      force: "mandatory",
      covers: ["milk"],
      ...LIST,
    },
    {
      n: 7,
      key: "molluscs",
      text: "mollusc (separate from crustacea)",
      force: "mandatory",
      covers: ["mollusc"],
      ...LIST,
    },
    {
      n: 8,
      key: "peanuts",
      text: "peanut",
      force: "mandatory",
      covers: ["peanut"],
      ...LIST,
    },
    {
      n: 9,
      key: "soybeans",
      text: "soy, soya, soybean",
      force: "mandatory",
      covers: ["soya"],
      ...LIST,
    },
    {
      n: 10,
      key: "sesame",
      text: "sesame",
      force: "mandatory",
      covers: ["sesame"],
      ...LIST,
    },
    {
      n: 11,
      key: "tree_nuts",
      text: "nine tree nuts by name: almond, Brazil nut, cashew, hazelnut, macadamia, pecan, pine nut, pistachio, walnut",
      force: "mandatory",
      covers: ["treeNut"],
      ...LIST,
    },
    {
      n: 12,
      key: "lupin",
      text: "lupin",
      force: "mandatory",
      covers: ["lupin"],
      ...LIST,
    },
    {
      n: 13,
      key: "sulphites",
      text: "added sulphites at >= 10 mg/kg",
      force: "mandatory",
      covers: ["sulphites"],
      ...LIST,
    },
  ],
  rules: [
    {
      text: "bold required names in the ingredient statement AND a separate 'Contains' summary; 'may be present' is voluntary",
      source: "same",
      mark: "SEEN",
    },
  ],
  traps: [
    {
      text: "Celery, mustard and buckwheat are not in the list.",
      source: "Standard 1.2.3 / Schedule 9 as amended by P1044",
      mark: "SEEN",
    },
  ],
  emergency: {
    numbers: [
      { number: "000", country: "AU" },
      { number: "111", country: "NZ" },
    ],
    source: "emergency number, value from memory",
    mark: "MEMORY",
  },
};
