import type { Rate } from "../nose/report.js";
import type { Assessment } from "./assessSamples.js";
import { rateOf } from "./scoreGroup.js";

/** What was said of one food by noses that were never taught it. */
export interface UnknownFood {
  readonly dish: string;
  /** Findings that are *smelled* or *not smelled* and wrong, among all of known truth. */
  readonly wrong: Rate;
  /** Findings that are not uncertain, among all of known truth. */
  readonly said: Rate;
}

/** What was said of each food, and of all together, from an assessment held out by dish. */
export function unknownFood(assessment: Assessment): { foods: UnknownFood[]; all: UnknownFood } {
  const { prepared, sniffs } = assessment;
  const rowsOf = new Map<string, number[]>();
  prepared.sniffs.forEach(({ dish }, row) => rowsOf.set(dish, [...(rowsOf.get(dish) ?? []), row]));
  const summary = (dish: string, rows: readonly number[]): UnknownFood => {
    const found = rows
      .flatMap((row) => Object.values(sniffs[row]?.groups ?? {}))
      .filter(({ truth }) => truth !== "unknown");
    const said = found.filter(({ finding }) => finding !== "uncertain");
    const wrong = said.filter(({ finding, truth }) => (finding === "smelled") !== (truth === "present"));
    return { dish, wrong: rateOf(wrong.length, found.length), said: rateOf(said.length, found.length) };
  };
  const foods = [...rowsOf].map(([dish, rows]) => summary(dish, rows));
  foods.sort((a, b) => (a.dish < b.dish ? -1 : 1));
  return { foods, all: summary("all", [...prepared.sniffs.keys()]) };
}
