import type { AppModel } from "../appModel.js";
import { MealsDetailPage } from "./MealsDetailPage.js";
import { MealsFormPage } from "./MealsFormPage.js";
import { MealsListPage } from "./MealsListPage.js";
import { MealsReactionPage } from "./MealsReactionPage.js";
import { MealsReviewPage } from "./MealsReviewPage.js";
import { MealsTruthPage } from "./MealsTruthPage.js";

/** Meals: the list, one meal and its forms, the review. */
export function MealsPlace({ app }: { readonly app: AppModel }) {
  const [first, second, ...rest] = app.router.route.value.page;
  if (first === undefined) return <MealsListPage app={app} />;
  if (first === "new") return <MealsFormPage key="new" app={app} mealId={null} />;
  if (first === "review") return <MealsReviewPage app={app} address={[second ?? "", ...rest]} />;
  switch (second) {
    case "edit":
      return <MealsFormPage key={first} app={app} mealId={first} />;
    case "truth":
      return <MealsTruthPage key={first} app={app} mealId={first} />;
    case "reaction":
      return <MealsReactionPage key={first} app={app} mealId={first} />;
    default:
      return <MealsDetailPage key={first} app={app} mealId={first} />;
  }
}
