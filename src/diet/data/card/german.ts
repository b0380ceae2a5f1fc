import type { CardTexts } from "../../cardTexts.js";

export const CARD_GERMAN: CardTexts = {
  title: "Für die Küche: was ich nicht essen kann",
  diets: {
    eatsFishNoMeat:
      "Ich esse Fisch, aber kein Fleisch: kein Schwein, Rind, Lamm, Geflügel, Wild, keine Wurst, keinen Schinken, Speck, kein Schmalz und keine Fleischbrühe.",
    ovoLactoVegetarian:
      "Ich esse vegetarisch: kein Fleisch, Geflügel, keinen Fisch, keine Meeresfrüchte, auch keine Brühe, kein Fett und keine Gelatine daraus. Ei und Milch gehen.",
    ovoVegetarian:
      "Ich esse vegetarisch und ohne Milch: kein Fleisch, Geflügel, keinen Fisch, keine Meeresfrüchte, Gelatine, Milch, Butter, Sahne, keinen Käse. Ei geht.",
    lactoVegetarian:
      "Ich esse vegetarisch und ohne Ei: kein Fleisch, Geflügel, keinen Fisch, keine Meeresfrüchte, keine Gelatine, kein Ei. Milch geht.",
    vegan:
      "Ich esse nichts vom Tier: kein Fleisch, keinen Fisch, keine Meeresfrüchte, kein Ei, keine Milch, Butter, keinen Käse, keinen Honig, keine Gelatine, kein Schmalz und keine Brühe daraus.",
    halal:
      "Meine Ernährung ist halal: kein Schwein, Schmalz, Schinken oder Speck, kein Alkohol in Essen oder Sauce, kein anderes Fleisch, Fett und keine Gelatine, wenn Sie das Zertifikat nicht zeigen können.",
    kosher:
      "Meine Ernährung ist koscher: kein Schwein, keine Meeresfrüchte, kein Fleisch zusammen mit Milch, kein Fleisch, Käse, Wein und keine Gelatine, wenn Sie das Zertifikat nicht zeigen können.",
    ownList: "Ich lasse weg, was unten steht.",
  },
  groups: {
    meat: "Fleisch",
    fish: "Fisch",
    shellfish: "Meeresfrüchte (Krebstiere, Weichtiere)",
    dairy: "Milch und Milchprodukte",
    egg: "Ei",
    nut: "Nüsse und Erdnüsse",
    soya: "Soja",
    alcohol: "Alkohol, auch in Saucen",
  },
  avoidedGroups: "Bitte nicht: {list}.",
  allergy: "Ich habe eine ALLERGIE gegen: {list}.",
  graveAllergy: "Schon eine sehr kleine Menge kann lebensgefährlich sein.",
  coeliac:
    "Ich habe ZÖLIAKIE: kein Weizen, Dinkel, Roggen, keine Gerste, kein Hafer und nichts daraus, etwa Mehl, Paniermehl, Malz, Bier oder Sojasauce. Auch Krümel und Mehlstaub zählen.",
  intolerances: {
    lactose: "Laktose",
    fructose: "viel Fruktose",
    sorbitol: "Sorbit und andere Zuckeralkohole",
    histamine: "histaminreiche Speisen (gereift, geräuchert, vergoren)",
    gluten: "Gluten",
  },
  intolerance: "Ich vertrage nicht: {list}. (Das ist eine Unverträglichkeit, keine Allergie.)",
  ownWords: "Bitte auch nichts mit: {list}.",
  crossContact:
    "Bitte nehmen Sie saubere Pfannen, Bretter, frisches Fett und sauberes Besteck, halten Sie mein Essen getrennt von dem, was ich genannt habe, und nehmen Sie keine gemeinsame Fritteuse und keinen gemeinsamen Grill.",
  written: "Bitte zeigen Sie mir die Zutaten schriftlich und gehen Sie sie mit mir durch.",
  ifUnsure: "Wenn Sie es nicht genau wissen, sagen Sie es mir bitte. Dann esse ich es nicht.",
  help: "Diese Karte ist eine Hilfe, keine Garantie.",
  source: "common practice: chef cards; advice of food authorities, secondary quotation",
  mark: "common practice",
};
