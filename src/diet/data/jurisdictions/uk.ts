/** The allergen list of United Kingdom. */
import type { Jurisdiction, ListException } from "../../jurisdiction.js";
import { EU_LIST } from "./eu.js";

const LIST = {
  source: "GOV.UK, Running a food business: Allergies",
  mark: "SEEN",
  where: "gov.uk/food-safety-your-responsibilities/allergies",
} as const;

/** The assimilated regulation keeps the exceptions of the EU list. */
const asInAnnexII = (key: string): readonly ListException[] =>
  (EU_LIST.items.find((item) => item.key === key)?.exceptions ?? []).map((exception) => ({
    ...exception,
    source: "assimilated Regulation (EU) No 1169/2011 Annex II, value from memory",
    mark: "MEMORY",
  }));

export const UK_LIST: Jurisdiction = {
  id: "UK",
  name: "United Kingdom",
  instrument:
    "Assimilated Regulation (EU) No 1169/2011 Annex II; Food Information Regulations 2014 (SI 2014/1855) and devolved counterparts; prepacked-for-direct-sale rule from 1 October 2021",
  date: "2014; prepacked for direct sale from 1 October 2021",
  checkedOn: "2026-11-25",
  items: [
    {
      n: 1,
      key: "celery",
      text: "celery",
      force: "mandatory",
      covers: ["celery"],
      ...LIST,
    },
    {
      n: 2,
      key: "cereals_gluten",
      text: "cereals containing gluten - including wheat, rye, barley and oats",
      force: "mandatory",
      covers: ["glutenCereal"],
      exceptions: asInAnnexII("cereals_gluten"),
      ...LIST,
    },
    {
      n: 3,
      key: "crustaceans",
      text: "crustaceans - including prawns, crab and lobster",
      force: "mandatory",
      covers: ["crustacean"],
      ...LIST,
    },
    {
      n: 4,
      key: "eggs",
      text: "eggs",
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
      exceptions: asInAnnexII("fish"),
      ...LIST,
    },
    {
      n: 6,
      key: "lupin",
      text: "lupin",
      force: "mandatory",
      covers: ["lupin"],
      ...LIST,
    },
    {
      n: 7,
      key: "milk",
      text: "milk",
      force: "mandatory",
      covers: ["milk"],
      exceptions: asInAnnexII("milk"),
      ...LIST,
    },
    {
      n: 8,
      key: "molluscs",
      text: "molluscs - including squid, mussels, cockles, whelks and snails",
      force: "mandatory",
      covers: ["mollusc"],
      ...LIST,
    },
    {
      n: 9,
      key: "mustard",
      text: "mustard",
      force: "mandatory",
      covers: ["mustard"],
      ...LIST,
    },
    {
      n: 10,
      key: "tree_nuts",
      text: "nuts",
      force: "mandatory",
      covers: ["treeNut"],
      exceptions: asInAnnexII("tree_nuts"),
      notCovered: ["pineNut"],
      ...LIST,
    },
    {
      n: 11,
      key: "peanuts",
      text: "peanuts",
      force: "mandatory",
      covers: ["peanut"],
      ...LIST,
    },
    {
      n: 12,
      key: "sesame",
      text: "sesame seeds",
      force: "mandatory",
      covers: ["sesame"],
      ...LIST,
    },
    {
      n: 13,
      key: "soybeans",
      text: "soya beans",
      force: "mandatory",
      covers: ["soya"],
      exceptions: asInAnnexII("soybeans"),
      ...LIST,
    },
    {
      n: 14,
      key: "sulphites",
      text: "sulphur dioxide or sulphites at levels above 10 mg per kilogram or per litre",
      force: "mandatory",
      covers: ["sulphites"],
      thresholdText: "> 10 mg/kg or mg/L",
      ...LIST,
    },
  ],
  rules: [
    {
      text: "Best practice (not law), 5 March 2025: for non-prepacked food, allergen information easily available IN WRITING and supported by a CONVERSATION; England, Wales, Northern Ireland",
      source:
        "Food Standards Agency, Best practice guidance on allergen information for non-prepacked foods, March 2025",
      mark: "SEEN",
    },
    {
      text: "Prepacked for direct sale food must carry a full ingredient list with allergens emphasised (from 1 Oct 2021)",
      source: "Food Information (Amendment) (England) Regulations 2019",
      mark: "MEMORY",
    },
  ],
  traps: [
    {
      text: "Pine nuts and buckwheat are not in the list of the 14.",
      source: "assimilated Annex II, value from memory",
      mark: "MEMORY",
    },
  ],
  emergency: {
    numbers: [
      { number: "999", country: null },
      { number: "112", country: null },
    ],
    source: "emergency number, value from memory",
    mark: "MEMORY",
  },
};
