/** What the pages of You take from the diet tables, in one piece that is loaded when first needed. */
export { ALLERGEN_LISTS } from "../../diet/data/jurisdictions.js";
export { CARD_LANGUAGES } from "../../diet/kitchenCard.js";
export {
  allergiesView,
  allergyFormView,
  chosenAllergen,
  isKnownAllergen,
  OWN_ALLERGEN,
} from "../../views/allergiesView.js";
export { kitchenCardView } from "../../views/kitchenCardView.js";
export { substanceName } from "../../views/profileItemName.js";
