import { MealDetailActions, MealDetailScreen } from "../../screens/MealDetailScreen.js";
import { mealDetailView } from "../../views/mealDetailView.js";
import type { AppModel } from "../appModel.js";
import { deleteWithUndo } from "../meals/deleteWithUndo.js";
import { openMeal } from "../meals/openMeal.js";
import { createPhotoUrls, keptPhoto } from "../meals/photoUrls.js";
import { mealsListOf } from "../meals/mealsListOf.js";
import { suggestionsOf } from "../meals/suggestionsOf.js";
import { useControl } from "../meals/useControl.js";
import { hashOf } from "../router.js";
import { Frame } from "./Frame.js";
import { MealsMissing } from "./MealsTrouble.js";

/** One meal. */
export function MealsDetailPage({ app, mealId }: { readonly app: AppModel; readonly mealId: string }) {
  const control = useControl(() => openMeal(app.ports, mealId), mealId);
  const photos = useControl(() => createPhotoUrls(keptPhoto(app.ports.store)), mealId);
  const page = control.page.value;
  if (page.kind === "missing") return <MealsMissing app={app} />;
  if (page.kind === "reading") return <Frame app={app}>{null}</Frame>;
  const { meal, sample } = page;
  const view = mealDetailView(
    {
      meal,
      sample,
      allergyGroups: app.diet.allergyGroups.value,
      nowMs: app.ports.nowMs(),
      practice: meal.sniffId !== undefined && mealsListOf(app).practice.value.has(meal.sniffId),
      suggestions: meal.truth === null ? [] : suggestionsOf(app).value,
    },
    app.preferences.words.value,
  );
  const keep = async () => {
    const kept = await control.keepSample();
    if (!kept.ok) app.tellStoreError(kept.error);
  };
  const calls = {
    onBack: () => app.router.go("meals"),
    onTruth: () => app.router.go("meals", mealId, "truth"),
    onReaction: () => app.router.go("meals", mealId, "reaction"),
    onKeepSample: () => void keep(),
    onEdit: () => app.router.go("meals", mealId, "edit"),
    onDelete: () => void deleteWithUndo(app, mealId),
  };
  return (
    <Frame app={app} actions={<MealDetailActions view={view} calls={calls} />}>
      <MealDetailScreen
        view={view}
        calls={calls}
        photoUrlOf={photos.urlOf}
        hrefOf={(id) => hashOf("meals", id)}
      />
    </Frame>
  );
}
