/** The allergen list of United States. */
import type { Jurisdiction } from "../../jurisdiction.js";

const LIST = {
  source: "FD&C Act s.201(qq) as amended by FASTER Act 2021",
  mark: "SEEN",
  where: "secondary quotation only: open the legal text before citing it",
} as const;

export const US_LIST: Jurisdiction = {
  id: "US",
  name: "United States",
  instrument:
    "FD&C Act s.201(qq) [21 U.S.C. 321(qq)], s.403(w); FALCPA 2004 (effective 1 Jan 2006); FASTER Act 2021 (signed 23 Apr 2021, sesame from 1 Jan 2023)",
  date: "1 January 2006; sesame from 1 January 2023",
  checkedOn: "2026-11-25",
  items: [
    {
      n: 1,
      key: "milk",
      text: "Milk",
      force: "mandatory",
      covers: ["milk"],
      ...LIST,
    },
    {
      n: 2,
      key: "eggs",
      text: "Egg",
      force: "mandatory",
      covers: ["egg"],
      ...LIST,
    },
    {
      n: 3,
      key: "fish",
      text: "Fish (species named, e.g. bass, flounder, cod)",
      force: "mandatory",
      covers: ["fish"],
      ...LIST,
    },
    {
      n: 4,
      key: "crustaceans",
      text: "Crustacean shellfish (species named, e.g. crab, lobster, shrimp)",
      force: "mandatory",
      covers: ["crustacean"],
      ...LIST,
    },
    {
      n: 5,
      key: "tree_nuts",
      text: "Tree nuts (kind named, e.g. almonds, pecans, walnuts)",
      force: "mandatory",
      covers: ["treeNut"],
      ...LIST,
    },
    {
      n: 6,
      key: "wheat",
      text: "Wheat",
      force: "mandatory",
      covers: ["wheat"],
      ...LIST,
    },
    {
      n: 7,
      key: "peanuts",
      text: "Peanuts",
      force: "mandatory",
      covers: ["peanut"],
      exceptions: [
        {
          text: "highly refined oil derived from a major allergen",
          substances: ["refinedPeanutOil"],
          source: "FD&C Act s.201(qq)(2), value from memory",
          mark: "MEMORY",
        },
      ],
      ...LIST,
    },
    {
      n: 8,
      key: "soybeans",
      text: "Soybeans",
      force: "mandatory",
      covers: ["soya"],
      exceptions: [
        {
          text: "highly refined oil derived from a major allergen",
          substances: ["refinedSoyaOil"],
          source: "FD&C Act s.201(qq)(2), value from memory",
          mark: "MEMORY",
        },
      ],
      ...LIST,
    },
    {
      n: 9,
      key: "sesame",
      text: "Sesame",
      force: "mandatory",
      covers: ["sesame"],
      ...LIST,
    },
    {
      n: null,
      key: "sulphites",
      text: "sulfiting agents declared at >= 10 ppm under 21 CFR 101.100(a)(4)",
      force: "separateRule",
      covers: ["sulphites"],
      source: "21 CFR 101.100(a)(4)",
      mark: "MEMORY",
      where: "memory",
    },
  ],
  rules: [
    {
      text: "Food Code 2022: consumers informed IN WRITING of major allergens as ingredients in UNPACKAGED food; sesame added; bulk self-service labelled. Model code: states adopt different editions",
      source: "FDA Food Code 2022, 3-602.12(C) and definitions",
      mark: "SEEN",
    },
    {
      text: "Jan 2025 FDA guidance narrowed the tree-nut list used for labelling (e.g. coconut dropped) and widened egg/milk to other animals",
      source: "FDA Q&A guidance on food allergens, ed. 5, Jan 2025",
      mark: "MEMORY",
    },
  ],
  traps: [
    {
      text: "Molluscan shellfish, celery, mustard, lupin and gluten cereals other than wheat are not US major allergens",
      source: "FALCPA/FASTER list read as closed",
      mark: "SEEN",
    },
    {
      text: "highly refined oil derived from a major allergen and ingredients derived from such oil; ingredients exempted by petition or notification",
      source: "FD&C Act s.201(qq)(2)",
      mark: "MEMORY",
    },
  ],
  emergency: {
    numbers: [{ number: "911", country: null }],
    source: "emergency number, value from memory",
    mark: "MEMORY",
  },
};
