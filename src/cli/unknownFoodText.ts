import type { unknownFood } from "../teaching/unknownFood.js";
import { rateText } from "./assessText.js";

/** What noses said of food that they were never taught, one line a food. */
export function unknownFoodText({ foods, all }: ReturnType<typeof unknownFood>): string {
  const lines = [
    "Food never taught (dishes held out in lots, no nets): wrong findings, and findings that are not uncertain",
    ...foods.map(
      ({ dish, wrong, said }) => `  ${dish}: ${wrong.events} wrong, ${said.events} said, of ${said.trials}`,
    ),
    `  all: wrong ${rateText(all.wrong)}; said ${rateText(all.said)}`,
  ];
  return `${lines.join("\n")}\n`;
}
