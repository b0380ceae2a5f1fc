/** The allergen list of Canada. */
import type { Jurisdiction } from "../../jurisdiction.js";

const LIST = {
  source:
    "Health Canada, Priority food allergens (leaflet 2017, cat. H164-156/5-1-2017E); CFIA 'How to label allergens'",
  mark: "SEEN",
  where:
    "publications.gc.ca 9.841052; inspection.canada.ca/en/food-labels/labelling/industry/how-label-allergens",
} as const;

export const CA_LIST: Jurisdiction = {
  id: "CA",
  name: "Canada",
  instrument: "Food and Drug Regulations B.01.010.1",
  date: "leaflet of 2017",
  checkedOn: "2026-11-25",
  items: [
    {
      n: 1,
      key: "peanuts",
      text: "peanuts",
      force: "mandatory",
      covers: ["peanut"],
      ...LIST,
    },
    {
      n: 2,
      key: "tree_nuts",
      text: "tree nuts: almonds, Brazil nuts, cashews, hazelnuts, macadamia nuts, pecans, pine nuts, pistachios, walnuts (named)",
      force: "mandatory",
      covers: ["treeNut"],
      ...LIST,
    },
    {
      n: 3,
      key: "sesame",
      text: "sesame seeds",
      force: "mandatory",
      covers: ["sesame"],
      ...LIST,
    },
    {
      n: 4,
      key: "milk",
      text: "milk",
      force: "mandatory",
      covers: ["milk"],
      ...LIST,
    },
    {
      n: 5,
      key: "eggs",
      text: "eggs",
      force: "mandatory",
      covers: ["egg"],
      ...LIST,
    },
    {
      n: 6,
      key: "fish",
      text: "fish",
      force: "mandatory",
      covers: ["fish"],
      ...LIST,
    },
    {
      n: 7,
      key: "crustaceans_molluscs",
      text: "crustaceans and molluscs (named)",
      force: "mandatory",
      covers: ["crustacean", "mollusc"],
      ...LIST,
    },
    {
      n: 8,
      key: "soybeans",
      text: "soy",
      force: "mandatory",
      covers: ["soya"],
      ...LIST,
    },
    {
      n: 9,
      key: "wheat_triticale",
      text: "wheat or triticale",
      force: "mandatory",
      covers: ["wheat"],
      ...LIST,
    },
    {
      n: 10,
      key: "mustard",
      text: "mustard",
      force: "mandatory",
      covers: ["mustard"],
      ...LIST,
    },
    {
      n: 11,
      key: "sulphites",
      text: "sulphites (added; not a true allergen, grouped with them)",
      force: "mandatory",
      covers: ["sulphites"],
      ...LIST,
    },
    {
      n: null,
      key: "cereals_gluten",
      text: "gluten sources (barley, oats, rye, triticale, wheat) declared; sulphites at >= 10 ppm",
      force: "separateRule",
      covers: ["glutenCereal"],
      source: "FDR B.01.010.1",
      mark: "SEEN",
      where: "secondary quotation only: open the legal text before citing it",
    },
  ],
  rules: [],
  traps: [
    {
      text: "Celery, lupin and buckwheat are not in the list.",
      source:
        "Health Canada, Priority food allergens (leaflet 2017, cat. H164-156/5-1-2017E); CFIA 'How to label allergens'",
      mark: "SEEN",
    },
  ],
  emergency: {
    numbers: [{ number: "911", country: null }],
    source: "emergency number, value from memory",
    mark: "MEMORY",
  },
};
