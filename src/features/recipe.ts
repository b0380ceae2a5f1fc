/** Numbered recipes: how a sniff becomes a feature vector. A number never changes its meaning. */

/** What the log resistances are set against. */
export type Reference =
  | "cleanAir" // the same channel in clean air just before: survives slow drift of the sensor
  | "start" // the first headspace sweep: for sniffs without clean air
  | "none"; // the log resistance itself: keeps what a clean-air phase that was not clean would spoil

/** One way to describe a sniff. Raw temperature, humidity and pressure are in none of them. */
export interface Recipe {
  readonly id: number;
  readonly name: string;
  readonly reference: Reference;
  /** Also the bends of the uptake curve and the differences between neighbouring channels. */
  readonly rich: boolean;
}

/** All recipes that a nose may be taught on, in the order of preference at equal log loss. */
export const RECIPES: readonly Recipe[] = [
  { id: 1, name: "log ratio to clean air", reference: "cleanAir", rich: false },
  { id: 2, name: "log ratio to clean air, course and differences", reference: "cleanAir", rich: true },
  { id: 3, name: "log level", reference: "none", rich: false },
  { id: 4, name: "log level, course and differences", reference: "none", rich: true },
  { id: 5, name: "log ratio to the start, course and differences", reference: "start", rich: true },
];

/** The recipe of a number, or undefined for a number that this version does not know. */
export function recipeOf(id: number): Recipe | undefined {
  return RECIPES.find((recipe) => recipe.id === id);
}

/** How many features a recipe makes from `channels` channels. */
export function featureCount(recipe: Recipe, channels: number): number {
  return recipe.rich ? 4 * channels + (channels - 1) : 2 * channels;
}
