import type { CardTexts } from "../../cardTexts.js";

export const CARD_ENGLISH: CardTexts = {
  title: "For the kitchen: what I cannot eat",
  diets: {
    eatsFishNoMeat:
      "I eat fish, but no meat: no pork, beef, lamb, poultry, game, sausage, ham, bacon, lard or meat stock.",
    ovoLactoVegetarian:
      "I am vegetarian: no meat, poultry, fish or shellfish, no stock, fat or gelatine made from them. Egg and milk are fine.",
    ovoVegetarian:
      "I am vegetarian and take no milk: no meat, poultry, fish, shellfish, gelatine, milk, butter, cream or cheese. Egg is fine.",
    lactoVegetarian:
      "I am vegetarian and take no egg: no meat, poultry, fish, shellfish, gelatine or egg. Milk is fine.",
    vegan:
      "I eat nothing from animals: no meat, fish, shellfish, egg, milk, butter, cheese, honey, gelatine, lard or stock made from them.",
    halal:
      "My diet is halal: no pork, lard, ham or bacon, no alcohol in food or sauce, no other meat, fat or gelatine unless you can show its certificate.",
    kosher:
      "My diet is kosher: no pork, no shellfish, no meat together with milk, no meat, cheese, wine or gelatine unless you can show its certificate.",
    ownList: "I leave out the things listed below.",
  },
  groups: {
    meat: "meat",
    fish: "fish",
    shellfish: "shellfish (crustaceans, molluscs)",
    dairy: "milk and milk products",
    egg: "egg",
    nut: "nuts and peanuts",
    soya: "soya",
    alcohol: "alcohol, also in sauces",
  },
  avoidedGroups: "Please no: {list}.",
  allergy: "I have a food ALLERGY to: {list}.",
  graveAllergy: "A very small amount can be life-threatening.",
  coeliac:
    "I have COELIAC DISEASE: no wheat, spelt, rye, barley or oats and nothing made from them, such as flour, breadcrumbs, malt, beer or soy sauce. Crumbs and flour dust matter.",
  intolerances: {
    lactose: "lactose",
    fructose: "much fructose",
    sorbitol: "sorbitol and other sugar alcohols",
    histamine: "foods rich in histamine (aged, smoked, fermented)",
    gluten: "gluten",
  },
  intolerance: "I do not tolerate: {list}. (This is an intolerance, no allergy.)",
  ownWords: "Please also nothing with: {list}.",
  crossContact:
    "Please use clean pans, boards, oil and utensils, keep my food apart from what I named, and do not use a shared fryer or grill.",
  written: "Please show me the ingredients in writing and go through them with me.",
  ifUnsure: "If you cannot be certain, please tell me. Then I will not eat it.",
  help: "This card is a help, not a guarantee.",
  source: "common practice: chef cards; advice of food authorities, secondary quotation",
  mark: "common practice",
};
