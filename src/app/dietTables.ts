/** Everything that brings the diet tables along, in one piece that is loaded when first needed. */
import { cautionsFor } from "../diet/cautionsFor.js";
import { emptyProfile } from "../diet/profile.js";
import { searchDishes } from "../diet/searchDishes.js";

export { cautionsFor, searchDishes };
export { allergyGroupsOf, avoidedGroupsOf } from "../diet/avoidedGroupsOf.js";
export { kitchenQuestions } from "../diet/kitchenQuestions.js";
export { QUESTIONS } from "../diet/data/questions.js";
export { dietCautionViews } from "../views/dietCautionView.js";
export { standingView } from "../views/standingView.js";
export { tableLanguage } from "../views/tableLanguage.js";

/** The first look-up builds the index of all words, and a first search or caution is slow: better now than under a key. */
export function warmUp(): void {
  searchDishes("brothh", 1);
  cautionsFor({ text: "beef broth", claims: [], profile: { ...emptyProfile("EU"), diets: ["vegan"] } });
}
