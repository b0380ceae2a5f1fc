import { foldText } from "../../meals/foldText.js";

/** Few enough to stand in one or two lines on a phone. */
const MOST = 4;

/** Known places to choose from: those that what is typed could become, in the order given. */
export function placesLike(places: readonly string[], typed: string): string[] {
  const wanted = foldText(typed.trim());
  return places
    .filter((place) => foldText(place) !== wanted && foldText(place).includes(wanted))
    .slice(0, MOST);
}
