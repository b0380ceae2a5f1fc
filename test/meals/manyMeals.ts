import { seededRandom } from "../../src/kernel/random.js";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { plateFinding } from "./findings.js";

const DISHES = [
  "leek dumplings",
  "plum soup",
  "Klößchen in Brühe",
  "fried bean curd",
  "noodles, dry",
  "egg custard",
];
const CLAIMS = ["menu says vegetarian", "cook says no stock", "stall says vegan"];

/** Meals as a diary of years holds them: each with a finding, three cautions, a note; seeded, oldest first. */
export function manyMeals(count: number): Meal[] {
  const random = seededRandom(20261125);
  const pick = <T>(items: readonly T[]) => items[Math.floor(random() * items.length)] as T;
  return Array.from({ length: count }, (_, i) => ({
    ...newMeal(
      `m${String(i).padStart(6, "0")}`,
      new Date(Date.UTC(2020, 0, 1) + i * 4 * 3_600_000).toISOString(),
    ),
    dish: `${pick(DISHES)} no. ${Math.floor(random() * 400)}`,
    place: `stall ${Math.floor(random() * 60)}`,
    note: "Warm evening, much smoke from the next stall; sniffed twice, the second time from the other side.",
    claims: [pick(CLAIMS)],
    finding: { ...plateFinding, sniffId: `s${i}` },
    sniffId: `s${i}`,
    outcome: random() < 0.8 ? "eaten" : "sentBack",
    cautions: ["stock", "shared fryer", "egg wash"].map((text, k) => ({
      id: `c${k}`,
      text: `often hides: ${text}`,
    })),
  }));
}
