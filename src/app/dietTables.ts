/** Everything that brings the diet tables along, in one piece that is loaded when first needed. */
export { allergyGroupsOf, avoidedGroupsOf } from "../diet/avoidedGroupsOf.js";
export { cautionsFor } from "../diet/cautionsFor.js";
export { kitchenQuestions } from "../diet/kitchenQuestions.js";
export { QUESTIONS } from "../diet/data/questions.js";
export { searchDishes } from "../diet/searchDishes.js";
export { dietCautionView } from "../views/dietCautionView.js";
export { standingView } from "../views/standingView.js";
