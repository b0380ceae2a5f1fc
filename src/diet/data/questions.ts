/** What to ask the kitchen. English and German; the kitchen card speaks the kitchen's language. */
import type { Mark } from "../provenance.js";

interface QuestionShape {
  readonly id: string;
  readonly en: string;
  readonly de: string;
  readonly source: string;
  readonly mark: Mark;
}

const PRACTICE = {
  source: "common practice: questions of guests and cooks",
  mark: "common practice",
} as const;
const ADVICE = {
  source: "advice of allergy charities and food authorities, secondary quotation",
  mark: "SEEN",
} as const;

export const QUESTIONS = [
  {
    id: "stock",
    en: "Which stock or bouillon is in it: meat, fish or vegetable? Powder or cube as well?",
    de: "Welche Brühe ist darin: Fleisch, Fisch oder Gemüse? Auch als Pulver oder Würfel?",
    ...PRACTICE,
  },
  {
    id: "fat",
    en: "Which fat is it fried, baked or brushed with?",
    de: "In welchem Fett wird es gebraten, gebacken oder damit bestrichen?",
    ...PRACTICE,
  },
  {
    id: "fryer",
    en: "What else goes into the same fryer or onto the same grill?",
    de: "Was kommt sonst noch in dieselbe Fritteuse oder auf denselben Grill?",
    ...PRACTICE,
  },
  {
    id: "meat",
    en: "Is there meat, ham, bacon or sausage in it, also as garnish, minced or in the filling?",
    de: "Ist Fleisch, Schinken, Speck oder Wurst darin, auch als Einlage, gehackt oder in der Füllung?",
    ...PRACTICE,
  },
  {
    id: "slaughter",
    en: "Which meat is it, and is there a certificate from an authority you can show?",
    de: "Welches Fleisch ist es, und gibt es ein Zertifikat einer Behörde, das Sie zeigen können?",
    ...PRACTICE,
  },
  {
    id: "gelatine",
    en: "Is there gelatine in it, and from which animal?",
    de: "Ist Gelatine darin, und von welchem Tier?",
    ...PRACTICE,
  },
  {
    id: "rennet",
    en: "Which cheese is it, and was it made with animal rennet?",
    de: "Welcher Käse ist es, und wurde er mit tierischem Lab gemacht?",
    ...PRACTICE,
  },
  {
    id: "origin",
    en: "May I see the packet: is this additive from a plant or an animal?",
    de: "Darf ich die Packung sehen: Ist dieser Zusatzstoff pflanzlich oder tierisch?",
    ...PRACTICE,
  },
  {
    id: "honey",
    en: "Is honey or another bee product used?",
    de: "Wird Honig oder ein anderes Bienenprodukt verwendet?",
    ...PRACTICE,
  },
  {
    id: "fish",
    en: "Is there fish in it, also in the stock, the sauce or the paste?",
    de: "Ist Fisch darin, auch in Brühe, Sauce oder Paste?",
    ...PRACTICE,
  },
  {
    id: "fishSauce",
    en: "Is there fish sauce, anchovy, dashi, shrimp paste or oyster sauce in it?",
    de: "Ist Fischsauce, Sardelle, Dashi, Garnelenpaste oder Austernsauce darin?",
    ...PRACTICE,
  },
  {
    id: "seafood",
    en: "Are there prawns, crab, mussels, squid or snails in it, also in paste or stock?",
    de: "Sind Garnelen, Krabben, Muscheln, Tintenfisch oder Schnecken darin, auch in Paste oder Brühe?",
    ...PRACTICE,
  },
  {
    id: "fining",
    en: "How is this wine or beer cleared?",
    de: "Womit ist dieser Wein oder dieses Bier geklärt?",
    ...PRACTICE,
  },
  {
    id: "dairy",
    en: "Is there milk, butter, cream, cheese or whey in it?",
    de: "Ist Milch, Butter, Sahne, Käse oder Molke darin?",
    ...PRACTICE,
  },
  {
    id: "egg",
    en: "Is there egg in it, also as a glaze, in the pasta, in breading or in mayonnaise?",
    de: "Ist Ei darin, auch zum Bestreichen, im Teig, in der Panade oder in Mayonnaise?",
    ...PRACTICE,
  },
  {
    id: "flour",
    en: "Which flour, malt, breadcrumbs or soy sauce is used, also for thickening?",
    de: "Welches Mehl, Malz, Paniermehl oder welche Sojasauce wird verwendet, auch zum Binden?",
    ...PRACTICE,
  },
  {
    id: "nuts",
    en: "Which nuts, peanuts, seeds or nut oils are in it or on it?",
    de: "Welche Nüsse, Erdnüsse, Samen oder Nussöle sind darin oder darauf?",
    ...PRACTICE,
  },
  {
    id: "soya",
    en: "Is there soya in it: tofu, miso, soy sauce, lecithin?",
    de: "Ist Soja darin: Tofu, Miso, Sojasauce, Lecithin?",
    ...PRACTICE,
  },
  {
    id: "spices",
    en: "Is there celery or mustard in it, also in spice mixes and stock?",
    de: "Ist Sellerie oder Senf darin, auch in Gewürzmischungen und Brühe?",
    ...PRACTICE,
  },
  {
    id: "sulphites",
    en: "Are wine, dried fruit or other sulphured ingredients used?",
    de: "Werden Wein, Trockenobst oder andere geschwefelte Zutaten verwendet?",
    ...PRACTICE,
  },
  {
    id: "fruit",
    en: "Which fruits are in it, also as juice or purée?",
    de: "Welches Obst ist darin, auch als Saft oder Püree?",
    ...PRACTICE,
  },
  {
    id: "alcohol",
    en: "Is there wine, beer or spirit in it, also in the sauce or as flavouring?",
    de: "Ist Wein, Bier oder Schnaps darin, auch in der Sauce oder als Aroma?",
    ...PRACTICE,
  },
  {
    id: "sugar",
    en: "What is it sweetened with: fruit, honey, syrup or sugar alcohols?",
    de: "Womit ist es gesüßt: Obst, Honig, Sirup oder Zuckeralkohole?",
    ...PRACTICE,
  },
  {
    id: "aged",
    en: "What in it is aged, smoked or fermented?",
    de: "Was darin ist gereift, geräuchert oder vergoren?",
    ...PRACTICE,
  },
  {
    id: "ownWord",
    en: "Is what I named in this dish?",
    de: "Ist das, was ich genannt habe, in diesem Gericht?",
    ...PRACTICE,
  },
  {
    id: "label",
    en: "May I see the ingredients in writing, and may we go through them together?",
    de: "Darf ich die Zutaten schriftlich sehen, und können wir sie zusammen durchgehen?",
    ...ADVICE,
  },
  {
    id: "crossContact",
    en: "Can it be made with clean pans, boards, oil and utensils, away from what I named?",
    de: "Kann es mit sauberen Pfannen, Brettern, Fett und Besteck gemacht werden, getrennt von dem, was ich genannt habe?",
    ...ADVICE,
  },
] as const satisfies readonly QuestionShape[];

export type QuestionId = (typeof QUESTIONS)[number]["id"];
