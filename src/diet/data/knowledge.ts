/** Every row of the knowledge tables. */
import type { KnowledgeRow } from "../knowledgeRow.js";
import { ADDITIVES } from "./knowledge/additives.js";
import { CEREALS } from "./knowledge/cereals.js";
import { DAIRY_AND_EGG } from "./knowledge/dairyAndEgg.js";
import { DISHES_ASIAN } from "./knowledge/dishesAsian.js";
import { DISHES_BRITISH_AMERICAN } from "./knowledge/dishesBritishAmerican.js";
import { DISHES_GERMAN } from "./knowledge/dishesGerman.js";
import { DISHES_MEDITERRANEAN } from "./knowledge/dishesMediterranean.js";
import { DISHES_MIDDLE_EAST_INDIA } from "./knowledge/dishesMiddleEastIndia.js";
import { DRINKS } from "./knowledge/drinks.js";
import { MEATS } from "./knowledge/meats.js";
import { NAMESAKES } from "./knowledge/namesakes.js";
import { NUTS_AND_PLANTS } from "./knowledge/nutsAndPlants.js";
import { SAUCES } from "./knowledge/sauces.js";
import { SEAFOOD } from "./knowledge/seafood.js";
import { SWEETS } from "./knowledge/sweets.js";

export const KNOWLEDGE: readonly KnowledgeRow[] = [
  ...MEATS,
  ...SEAFOOD,
  ...DAIRY_AND_EGG,
  ...CEREALS,
  ...NUTS_AND_PLANTS,
  ...SAUCES,
  ...DRINKS,
  ...ADDITIVES,
  ...DISHES_GERMAN,
  ...DISHES_MEDITERRANEAN,
  ...DISHES_BRITISH_AMERICAN,
  ...DISHES_ASIAN,
  ...DISHES_MIDDLE_EAST_INDIA,
  ...SWEETS,
  ...NAMESAKES,
];
