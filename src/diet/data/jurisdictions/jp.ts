/** The allergen list of Japan. */
import type { Jurisdiction, ListItem } from "../../jurisdiction.js";
import type { SubstanceId } from "../substances.js";

const LIST = {
  source: "Osaka Prefecture note, 5 March 2025, listing 8 + 20",
  mark: "SEEN",
  where: "pref.osaka.lg.jp/documents/698/mail20250305.txt",
} as const;

const recommended = (text: string, substance: SubstanceId): ListItem => ({
  n: null,
  key: text,
  text,
  force: "recommended",
  covers: [substance],
  source: "Osaka Prefecture note, 5 March 2025, listing 8 + 20",
  mark: "SEEN",
  where: "pref.osaka.lg.jp",
});

export const JP_LIST: Jurisdiction = {
  id: "JP",
  name: "Japan",
  instrument:
    "Food Labelling Standards (Cabinet Office Ordinance No. 10 of 2015), Appended Table 14 (specified ingredients) and Consumer Affairs Agency notice (equivalents)",
  date: "2015; walnut from 9 March 2023 (transition until 31 March 2025)",
  checkedOn: "2026-11-25",
  items: [
    {
      n: 1,
      key: "shrimp",
      text: "えび shrimp/prawn",
      force: "mandatory",
      covers: ["shrimp"],
      ...LIST,
    },
    {
      n: 2,
      key: "crab",
      text: "かに crab",
      force: "mandatory",
      covers: ["crab"],
      ...LIST,
    },
    {
      n: 3,
      key: "walnut",
      text: "くるみ walnut",
      force: "mandatory",
      covers: ["walnut"],
      ...LIST,
    },
    {
      n: 4,
      key: "wheat",
      text: "小麦 wheat",
      force: "mandatory",
      covers: ["wheat"],
      ...LIST,
    },
    {
      n: 5,
      key: "buckwheat",
      text: "そば buckwheat",
      force: "mandatory",
      covers: ["buckwheat"],
      ...LIST,
    },
    {
      n: 6,
      key: "eggs",
      text: "卵 egg",
      force: "mandatory",
      covers: ["egg"],
      ...LIST,
    },
    {
      n: 7,
      key: "milk",
      text: "乳 milk",
      force: "mandatory",
      covers: ["milk"],
      ...LIST,
    },
    {
      n: 8,
      key: "peanuts",
      text: "落花生 peanut",
      force: "mandatory",
      covers: ["peanut"],
      ...LIST,
    },
    {
      n: 9,
      key: "cashew",
      text: "カシューナッツ cashew nut",
      force: "mandatory",
      covers: ["cashew"],
      status:
        "PROVISIONAL: advisory decision 15 Dec 2025 (2-year transition); draft ordinance consulted 26 Dec 2025; a prepared web page that marks its own dates as provisional gives 1 April 2026 with transition to 31 March 2028. Verify promulgation.",
      source: "Consumer Affairs Agency advisory council; draft Cabinet Office Ordinance",
      mark: "SEEN",
      where: "secondary quotation only: open the legal text before citing it",
    },
    recommended("almond", "almond"),
    recommended("abalone", "abalone"),
    recommended("squid", "squid"),
    recommended("salmon roe", "salmonRoe"),
    recommended("orange", "orange"),
    recommended("cashew", "cashew"),
    recommended("kiwifruit", "kiwi"),
    recommended("beef", "beef"),
    recommended("sesame", "sesame"),
    recommended("salmon", "salmon"),
    recommended("mackerel", "mackerel"),
    recommended("soybean", "soya"),
    recommended("chicken", "chicken"),
    recommended("banana", "banana"),
    recommended("pork", "pork"),
    recommended("macadamia", "macadamia"),
    recommended("peach", "peach"),
    recommended("yam", "yam"),
    recommended("apple", "apple"),
    recommended("gelatin", "gelatine"),
  ],
  rules: [
    {
      text: "obligation is for packaged food; restaurant menus and face-to-face sale are not covered by the obligation",
      source: "column on CAA labelling scope",
      mark: "SEEN",
    },
    {
      text: "Walnut mandatory since 2023-03-09, transition until 2025-03-31; cashew planned for 2026-04-01 (provisional), transition until 2028-03-31 (provisional)",
      source: "Consumer Affairs Agency, draft ordinance: provisional dates",
      mark: "SEEN",
    },
  ],
  traps: [
    {
      text: "Buckwheat is mandatory here only; the Codex leaves it to the nations.",
      source: "Osaka Prefecture note, 5 March 2025, listing 8 + 20",
      mark: "SEEN",
    },
  ],
  emergency: {
    numbers: [{ number: "119", country: null }],
    source: "emergency number, value from memory",
    mark: "MEMORY",
  },
};
