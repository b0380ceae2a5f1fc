/** The invented night market: its dishes, and one plate of a dish. */
import { FOOD_GROUPS, type FoodGroup, type GroupTruths } from "../kernel/groups.js";
import { standardNormal, type RandomSource } from "../kernel/random.js";
import { spreadFactor } from "./chance.js";
import { FAMILIES, type FamilyPpm } from "./families.js";
import { INGREDIENTS, type IngredientName } from "./ingredients.js";
import { RECIPES } from "./recipes.js";

export interface Dish {
  readonly id: string;
  /** Plain English, as on the stall's board. */
  readonly name: string;
  /** Every group that an ingredient brings, in however small an amount. */
  readonly groups: readonly FoodGroup[];
  /** Served steaming; otherwise near the temperature of the air. */
  readonly hot: boolean;
  /** How much of each ingredient; 1 is an ordinary amount. */
  readonly recipe: Readonly<Partial<Record<IngredientName, number>>>;
}

/** One serving, as the sniffer meets it. */
export interface Plate {
  readonly dish: string;
  readonly groups: GroupTruths;
  /** Vapour at the sensor with the plate at 55 degrees Celsius, in ppm; shape [FAMILIES.length]. */
  readonly ppm: FamilyPpm;
  readonly servedC: number;
  /** Time constant of cooling towards the room, in milliseconds. */
  readonly coolingMs: number;
  /** Share of the air at the sensor that comes off the plate, a fraction. */
  readonly mixing: number;
}

/** Temperature at which the amounts of an ingredient are given, in degrees Celsius. */
export const RECIPE_C = 55;
/** Share of plate air at the sensor, held at an ordinary height: a hand's breadth. */
export const ORDINARY_MIXING = 0.035;

/** Spreads from plate to plate, as standard deviations of a logarithm. Invented for the model. */
const INGREDIENT_SPREAD = 0.25;
const PORTION_SPREAD = 0.25;
const MIXING_SPREAD = 0.25;
const FRESHNESS_SPREAD = 0.3;
/** Served hot: 57 to 63 degrees Celsius is the legal holding range (FD-05, FD-06), less the way to the table. */
const HOT_C = { mean: 58, sd: 4 };
const COOL_C = { mean: 27, sd: 3 };
const COOLING_MS = 11 * 60_000;
const COOLING_SPREAD = 0.25;

export const NIGHT_MARKET: readonly Dish[] = RECIPES.map(({ id, name, hot, recipe }) => ({
  id,
  name,
  hot,
  recipe,
  groups: FOOD_GROUPS.filter((group) => ingredientsOf(recipe).some(([it]) => it.groups.includes(group))),
}));

/**
 * One plate of a dish: portion, cook's hand, freshness, temperature and height above it all vary.
 * Freshness moves amines alone: sea fish makes them as it ages (check OD-04).
 */
export function plateOf(dish: Dish, random: RandomSource): Plate {
  const portion = spreadFactor(random, PORTION_SPREAD);
  const freshness = spreadFactor(random, FRESHNESS_SPREAD);
  const ppm = FAMILIES.map(() => 0);
  for (const [ingredient, amount] of ingredientsOf(dish.recipe)) {
    const share = portion * amount * spreadFactor(random, INGREDIENT_SPREAD);
    FAMILIES.forEach((family, i) => {
      ppm[i]! += share * (ingredient.ppm[family] ?? 0) * (family === "amines" ? freshness : 1);
    });
  }
  const { mean, sd } = dish.hot ? HOT_C : COOL_C;
  return {
    dish: dish.id,
    groups: truthsOf(dish),
    ppm,
    servedC: mean + sd * standardNormal(random),
    coolingMs: COOLING_MS * spreadFactor(random, COOLING_SPREAD),
    mixing: ORDINARY_MIXING * spreadFactor(random, MIXING_SPREAD),
  };
}

/** Every group the app offers, present or absent: the cook knows. */
export function truthsOf(dish: Dish): GroupTruths {
  return Object.fromEntries(
    FOOD_GROUPS.map((group) => [group, dish.groups.includes(group) ? "present" : "absent"]),
  );
}

function ingredientsOf(recipe: Dish["recipe"]) {
  return Object.entries(recipe).map(
    ([name, amount]) => [INGREDIENTS[name as IngredientName], amount] as const,
  );
}
