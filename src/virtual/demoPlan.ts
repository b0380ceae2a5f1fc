/** Which dish is sniffed on which evening, so that order and evening foretell no group (checks MX-11, MX-12). */
import { shuffled, type RandomSource } from "../kernel/random.js";
import { NIGHT_MARKET, type Dish } from "./dishes.js";

/** The groups that the plan balances against each other. */
export const BALANCED_GROUPS = ["meat", "fish", "shellfish", "egg"] as const;
/** Fewest market evenings that the plates are spread over. */
export const FEWEST_EVENINGS = 12;

export interface PlannedPlate {
  readonly dish: Dish;
  /** Counted from 0. */
  readonly evening: number;
}

/**
 * Plates in blocks: a block holds each of the sixteen combinations of the balanced groups once, in random order,
 * and of a combination's two dishes first one, then the other. An evening is one block where the numbers allow.
 *
 * @param plates - how many, whole, >= 1
 */
export function demoPlan(plates: number, random: RandomSource): PlannedPlate[] {
  if (!Number.isInteger(plates) || plates < 1) throw new RangeError(`plates: ${plates}`);
  const pairs = dishPairs();
  const evenings = Math.max(FEWEST_EVENINGS, Math.ceil(plates / pairs.length));
  const dishes: Dish[] = [];
  while (dishes.length < plates) {
    const firstOf = pairs.map(() => random() < 0.5);
    for (const other of [false, true]) {
      const block = pairs.map(([one, two], i) => (firstOf[i] === other ? one : two));
      dishes.push(...shuffled(block, random));
    }
  }
  return dishes
    .slice(0, plates)
    .map((dish, place) => ({ dish, evening: Math.floor((place * evenings) / plates) }));
}

/** The two dishes of each combination of the balanced groups. */
function dishPairs(): (readonly [Dish, Dish])[] {
  const combinationOf = (dish: Dish) => BALANCED_GROUPS.map((group) => dish.groups.includes(group)).join();
  const combinations = [...new Set(NIGHT_MARKET.map(combinationOf))];
  return combinations.map((combination) => {
    const [one, two] = NIGHT_MARKET.filter((dish) => combinationOf(dish) === combination);
    return [one!, two!] as const;
  });
}
