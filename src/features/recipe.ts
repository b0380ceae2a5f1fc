/** Numbered recipes: how a sniff becomes a feature vector. A number never changes its meaning. */

/** What the log resistances are set against. */
export type Reference =
  | "cleanAir" // the same channel in clean air just before: survives slow drift of the sensor
  | "start" // the first headspace sweep: for sniffs without clean air
  | "none"; // the log resistance itself: keeps what a clean-air phase that was not clean would spoil

/** What is read off the course of the log resistances over the headspace phase. */
export type Course =
  | "end" // level in the last quarter, and how far it moved since the first
  | "bends" // these, the bends of the uptake curve, and the differences between neighbouring channels
  | "quarters" // level in each quarter, how much it moved at all, and the differences between neighbours
  | "mean"; // mean level, start and end against it, how much it moved at all, and the differences between neighbours

/** One way to describe a sniff. Raw temperature, humidity and pressure are in none of them. */
export interface Recipe {
  readonly id: number;
  readonly name: string;
  readonly reference: Reference;
  readonly course: Course;
}

/** All recipes that a nose may be taught on, in the order of preference at equal log loss. */
export const RECIPES: readonly Recipe[] = [
  { id: 1, name: "log ratio to clean air", reference: "cleanAir", course: "end" },
  { id: 2, name: "log ratio to clean air, course and differences", reference: "cleanAir", course: "bends" },
  { id: 3, name: "log level", reference: "none", course: "end" },
  { id: 4, name: "log level, course and differences", reference: "none", course: "bends" },
  { id: 5, name: "log ratio to the start, course and differences", reference: "start", course: "bends" },
  { id: 6, name: "log level by quarters, spread and differences", reference: "none", course: "quarters" },
  { id: 7, name: "mean log level, start, end, spread and differences", reference: "none", course: "mean" },
  {
    id: 8,
    name: "log ratio to clean air by quarters, spread and differences",
    reference: "cleanAir",
    course: "quarters",
  },
  {
    id: 9,
    name: "mean log ratio to clean air, start, end, spread and differences",
    reference: "cleanAir",
    course: "mean",
  },
];

/** The recipe of a number, or undefined for a number that this version does not know. */
export function recipeOf(id: number): Recipe | undefined {
  return RECIPES.find((recipe) => recipe.id === id);
}

/**
 * The recipe of the other view that a nose has of a sniff: the mean of the course where its own recipe goes quarter by
 * quarter, and the quarters elsewhere.
 */
export function otherView({ reference, course }: Recipe): Recipe {
  const against = reference === "start" ? "none" : reference;
  const other = course === "quarters" ? "mean" : "quarters";
  const found = RECIPES.find((one) => one.reference === against && one.course === other);
  if (found === undefined) throw new RangeError(`no recipe goes by ${other} against ${against}`);
  return found;
}

/** How many features a recipe makes from `channels` channels. */
export function featureCount(recipe: Recipe, channels: number): number {
  const perChannel: Record<Course, number> = { end: 2, bends: 4, quarters: 5, mean: 4 };
  return perChannel[recipe.course] * channels + (recipe.course === "end" ? 0 : channels - 1);
}
