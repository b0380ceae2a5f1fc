/**
 * What the night market cooks with. Each ingredient gives off a mixture of compound families; many overlap, as
 * in real food: sulfur in meat, egg, garlic, cabbage and shellfish (check OD-08), fat aldehydes in meat, fish
 * and frying oil (OD-01, OD-02), amines in sea fish and shellfish but hardly in river fish (OD-04, OD-05).
 * Which family comes from which food follows those sources and PHYSICS.md; the amounts are invented.
 */
import type { FoodGroup } from "../kernel/groups.js";
import type { Family } from "./families.js";

export interface Ingredient {
  /** Food groups it brings to the plate, in however small an amount. */
  readonly groups: readonly FoodGroup[];
  /** Vapour at the sensor over an ordinary amount of it at 55 degrees Celsius, in ppm. */
  readonly ppm: Partial<Record<Family, number>>;
}

type Table = Readonly<Record<string, Ingredient>>;

const food = (groups: readonly FoodGroup[], ppm: Ingredient["ppm"]): Ingredient => ({ groups, ppm });

const ANIMAL = {
  beef: food(["meat"], {
    fatAldehydes: 1.5,
    streckerAldehydes: 0.9,
    hydrogenSulfide: 0.44,
    ketones: 0.3,
    pyrazines: 0.1,
  }),
  pork: food(["meat"], {
    fatAldehydes: 1.8,
    streckerAldehydes: 0.7,
    hydrogenSulfide: 0.38,
    ketones: 0.25,
    pyrazines: 0.1,
  }),
  chicken: food(["meat"], {
    fatAldehydes: 2.0,
    streckerAldehydes: 0.6,
    hydrogenSulfide: 0.36,
    dimethylSulfide: 0.05,
    ketones: 0.2,
  }),
  duck: food(["meat"], {
    fatAldehydes: 2.4,
    streckerAldehydes: 0.85,
    hydrogenSulfide: 0.44,
    ketones: 0.25,
    pyrazines: 0.25,
  }),
  lamb: food(["meat"], {
    fatAldehydes: 1.7,
    streckerAldehydes: 0.75,
    hydrogenSulfide: 0.38,
    acids: 0.4,
    pyrazines: 0.3,
  }),
  seaFish: food(["fish"], { amines: 1.4, fatAldehydes: 0.7, alcohols: 0.3, dimethylSulfide: 0.08 }),
  riverFish: food(["fish"], { amines: 0.4, fatAldehydes: 0.7, alcohols: 0.5 }),
  fishSauce: food(["fish"], { amines: 0.95, acids: 0.6, streckerAldehydes: 0.25, dimethylSulfide: 0.05 }),
  driedFish: food(["fish"], { amines: 1.2, streckerAldehydes: 0.3, pyrazines: 0.2, acids: 0.2 }),
  prawn: food(["shellfish"], { dimethylSulfide: 0.95, amines: 0.28, pyrazines: 0.12 }),
  clam: food(["shellfish"], { dimethylSulfide: 1.5, amines: 0.25, alcohols: 0.4 }),
  crab: food(["shellfish"], { dimethylSulfide: 1.2, amines: 0.4, pyrazines: 0.15 }),
  driedPrawn: food(["shellfish"], { dimethylSulfide: 0.75, amines: 0.4, pyrazines: 0.25 }),
  oysterSauce: food(["shellfish"], { dimethylSulfide: 0.6, acids: 0.3, streckerAldehydes: 0.2 }),
  egg: food(["egg"], { hydrogenSulfide: 0.15, fatAldehydes: 0.12, dimethylSulfide: 0.04 }),
  friedEgg: food(["egg"], { hydrogenSulfide: 0.16, fatAldehydes: 0.35, pyrazines: 0.05 }),
  eggDough: food(["egg"], { hydrogenSulfide: 0.05, streckerAldehydes: 0.12, alcohols: 0.15 }),
  creamCustard: food(["dairy", "egg"], { ketones: 1.0, acids: 0.3, hydrogenSulfide: 0.1, esters: 0.3 }),
  butter: food(["dairy"], { ketones: 1.1, acids: 0.4, fatAldehydes: 0.25 }),
  condensedMilk: food(["dairy"], { ketones: 0.7, acids: 0.15, streckerAldehydes: 0.1 }),
} satisfies Table;

const PLANT = {
  wheatDough: food([], { streckerAldehydes: 0.2, alcohols: 0.25 }),
  riceNoodles: food([], { fatAldehydes: 0.12, alcohols: 0.1 }),
  rice: food([], { fatAldehydes: 0.15, streckerAldehydes: 0.05, pyrazines: 0.04 }),
  garlic: food([], { alliumSulfides: 1.7, dimethylSulfide: 0.06, hydrogenSulfide: 0.03 }),
  springOnion: food([], { alliumSulfides: 0.9, fatAldehydes: 0.1 }),
  cabbage: food([], { dimethylSulfide: 0.55, hydrogenSulfide: 0.06, alliumSulfides: 0.1 }),
  seaweed: food([], { dimethylSulfide: 0.6, amines: 0.08, alcohols: 0.1 }),
  mushroom: food([], { alcohols: 1.2, ketones: 0.3, dimethylSulfide: 0.08 }),
  ginger: food([], { terpenes: 1.4 }),
  herbs: food([], { terpenes: 1.1, fatAldehydes: 0.25, esters: 0.15 }),
  cumin: food([], { terpenes: 1.2, fatAldehydes: 0.35, pyrazines: 0.25 }),
  lime: food([], { terpenes: 1.6, acids: 0.2 }),
  vinegar: food([], { acids: 4.0, esters: 0.3, alcohols: 0.3 }),
  chilliOil: food([], { fatAldehydes: 0.5, pyrazines: 0.15, terpenes: 0.3 }),
  fryingOil: food([], { fatAldehydes: 0.8, ketones: 0.1 }),
  charcoal: food([], { pyrazines: 0.6, streckerAldehydes: 0.45, ketones: 0.3, acids: 0.3 }),
  sesame: food([], { pyrazines: 0.8, streckerAldehydes: 0.2, fatAldehydes: 0.15 }),
  coconut: food([], { ketones: 0.7, esters: 0.35, fatAldehydes: 0.1 }),
  fruit: food([], { esters: 2.2, terpenes: 0.7, alcohols: 0.4 }),
  tomato: food([], { fatAldehydes: 0.35, dimethylSulfide: 0.2, esters: 0.1, acids: 0.3 }),
  palmSugar: food([], { streckerAldehydes: 0.25, ketones: 0.35, pyrazines: 0.1 }),
  sourGreens: food([], { acids: 1.2, dimethylSulfide: 0.2, alcohols: 0.3 }),
  soySauce: food(["soya"], { alcohols: 1.2, streckerAldehydes: 0.4, acids: 0.5, ketones: 0.15 }),
  tofu: food(["soya"], { fatAldehydes: 0.3, alcohols: 0.15 }),
  fermentedBeans: food(["soya"], { acids: 0.7, pyrazines: 0.4, streckerAldehydes: 0.4, alcohols: 0.5 }),
  riceWine: food(["alcohol"], { alcohols: 6.0, esters: 0.9, acids: 0.3 }),
  cashew: food(["nut"], { pyrazines: 0.55, fatAldehydes: 0.25, streckerAldehydes: 0.25 }),
  walnut: food(["nut"], { fatAldehydes: 0.5, pyrazines: 0.35 }),
} satisfies Table;

export const INGREDIENTS = { ...ANIMAL, ...PLANT };
export type IngredientName = keyof typeof INGREDIENTS;
