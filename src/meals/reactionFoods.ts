/** Foods that went before a reaction more often than chance would have it: a hint to talk over with a doctor. */
import { fisherExact, oddsRatioInterval, type TwoByTwo } from "../stats/contingency.js";
import type { Interval } from "../stats/interval.js";
import { benjaminiHochberg } from "../stats/multipleTesting.js";
import { foldText } from "./foldText.js";
import type { Meal } from "./meal.js";

/**
 * Fewer meals than these show nothing worth a hint. They bear on the margins of the table only, which Fisher's
 * test holds fixed, so that leaving a food out does not depend on what followed it. Our own choice.
 */
export const MIN_MEALS_WITH_FOOD = 5;
export const MIN_MEALS_WITHOUT_FOOD = 5;
export const MIN_REACTIONS = 3;

/** Share of false hints among the hints that is put up with, in the long run. Common practice. */
export const FALSE_DISCOVERY_RATE = 0.05;

/** One food and what followed it. */
export interface FoodBeforeReaction {
  readonly food: string;
  readonly mealsWith: number;
  readonly reactionsWith: number;
  readonly mealsWithout: number;
  readonly reactionsWithout: number;
  /** One-sided: reactions at least this much more often after the food. */
  readonly pValue: number;
  /** After Benjamini and Hochberg, over all foods that were compared. */
  readonly adjustedP: number;
  /** 95 % interval of the odds ratio. */
  readonly oddsRatio: Interval;
}

/** What the comparison came to. It never says that a food caused anything. */
export interface ReactionFoods {
  /** Meals that were eaten, at least in part. */
  readonly meals: number;
  readonly reactions: number;
  /** Meals of which nothing was written down afterwards: taken as without a reaction. */
  readonly nothingWritten: number;
  /** How many foods had enough meals to compare. */
  readonly compared: number;
  /** At or below the false discovery rate, the least likely by chance first. */
  readonly hints: readonly FoodBeforeReaction[];
}

/**
 * Compares, food by food, the meals with it and the meals without it.
 *
 * A meal counts if it was eaten, at least in part; a reaction is a severity of 1 or more.
 *
 * @param foodsOf - foods of one meal by name; spellings that fold alike are one food
 * @param falseDiscoveryRate - fraction strictly between 0 and 1
 * @throws {RangeError} if the rate is out of range
 * @see Fisher, J. Royal Statistical Society 98 (1935), 39-82; Benjamini and Hochberg, same journal B 57 (1995), 289-300
 */
export function reactionFoods(
  meals: readonly Meal[],
  foodsOf: (meal: Meal) => readonly string[],
  falseDiscoveryRate = FALSE_DISCOVERY_RATE,
): ReactionFoods {
  if (!(falseDiscoveryRate > 0 && falseDiscoveryRate < 1))
    throw new RangeError(`a false discovery rate lies between 0 and 1, got ${falseDiscoveryRate}`);
  const eaten = meals.filter(({ outcome }) => outcome === "eaten" || outcome === "partlyEaten");
  const reactions = eaten.filter(hadReaction).length;
  const foods = reactions < MIN_REACTIONS ? [] : [...countFoods(eaten, foodsOf).values()];
  const compared = foods.filter(
    ({ mealsWith }) => mealsWith >= MIN_MEALS_WITH_FOOD && eaten.length - mealsWith >= MIN_MEALS_WITHOUT_FOOD,
  );
  return {
    meals: eaten.length,
    reactions,
    nothingWritten: eaten.filter(({ reaction }) => reaction === null).length,
    compared: compared.length,
    hints: tested(compared, eaten.length, reactions)
      .filter(({ adjustedP }) => adjustedP <= falseDiscoveryRate)
      .sort((left, right) => left.pValue - right.pValue || (left.food < right.food ? -1 : 1)),
  };
}

interface FoodCount {
  readonly food: string;
  mealsWith: number;
  reactionsWith: number;
}

function countFoods(
  meals: readonly Meal[],
  foodsOf: (meal: Meal) => readonly string[],
): Map<string, FoodCount> {
  const counts = new Map<string, FoodCount>();
  for (const meal of meals) {
    const named = new Map(foodsOf(meal).map((food) => [foldText(food.trim()), food.trim()]));
    named.delete("");
    for (const [key, food] of named) {
      const count = counts.get(key) ?? { food, mealsWith: 0, reactionsWith: 0 };
      count.mealsWith += 1;
      if (hadReaction(meal)) count.reactionsWith += 1;
      counts.set(key, count);
    }
  }
  return counts;
}

function tested(foods: readonly FoodCount[], meals: number, reactions: number): FoodBeforeReaction[] {
  const compared = foods.map((count) => {
    const mealsWithout = meals - count.mealsWith;
    const reactionsWithout = reactions - count.reactionsWith;
    const table: TwoByTwo = [
      [count.reactionsWith, count.mealsWith - count.reactionsWith],
      [reactionsWithout, mealsWithout - reactionsWithout],
    ];
    const pValue = fisherExact(table).greater;
    return { ...count, mealsWithout, reactionsWithout, pValue, oddsRatio: oddsRatioInterval(table) };
  });
  const adjusted = benjaminiHochberg(compared.map(({ pValue }) => pValue));
  return compared.map((food, i) => ({ ...food, adjustedP: adjusted[i] ?? 1 }));
}

function hadReaction({ reaction }: Meal): boolean {
  return reaction !== null && reaction.severity > 0;
}
