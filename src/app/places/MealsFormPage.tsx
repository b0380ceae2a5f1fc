import { FormActions } from "../../screens/parts/FormActions.js";
import { MealFormScreen } from "../../screens/MealFormScreen.js";
import { mealFormView } from "../../views/mealFormView.js";
import type { AppModel } from "../appModel.js";
import { editStart, newMealStart } from "../meals/formStart.js";
import { createMealForm } from "../meals/mealForm.js";
import { mealsListOf } from "../meals/mealsListOf.js";
import { placesLike } from "../meals/placesLike.js";
import { useForm } from "../meals/useControl.js";
import { Frame } from "./Frame.js";
import { MealsMissing } from "./MealsTrouble.js";

interface Props {
  readonly app: AppModel;
  /** null: a new meal. */
  readonly mealId: string | null;
}

/** A meal as a form: by hand, after a check, or edited. */
export function MealsFormPage({ app, mealId }: Props) {
  const form = useForm(
    () => createMealForm(app.ports, mealId === null ? newMealStart(app) : editStart(mealId)),
    mealId ?? "new",
  );
  const open = form.open.value;
  if (open === "missing") return <MealsMissing app={app} />;
  if (open === null) return <Frame app={app}>{null}</Frame>;
  const { draft, photoFault, status, subject } = open;
  const places = placesLike(mealsListOf(app).places.value, draft.place);
  const view = mealFormView(
    { draft, photoFault, status, places, isNew: mealId === null },
    app.preferences.words.value,
  );
  const checkedSniff = () => {
    const { value } = app.check.state;
    return value.phase === "done" ? value.sniff.id : null;
  };
  const save = async () => {
    const meal = await form.save();
    if (meal === null) return;
    mealsListOf(app).put(meal);
    if (subject.kind === "check" && subject.sniffId === checkedSniff()) app.leaveCheck();
    app.router.replace("meals", meal.id);
  };
  const cancel = async () => {
    await form.discard();
    if (mealId !== null) app.router.replace("meals", mealId);
    else app.router.replace(subject.kind === "check" && checkedSniff() !== null ? "plate" : "meals");
  };
  const calls = {
    onField: form.set,
    onPhoto: (file: File) => void form.addPhoto(file),
    onRemovePhoto: form.removePhoto,
    onOutcome: form.setOutcome,
  };
  const actions = (
    <FormActions
      save={view.save}
      cancel={view.cancel}
      blocked={view.saving || view.when.fault !== undefined}
      onSave={() => void save()}
      onCancel={() => void cancel()}
    />
  );
  return (
    <Frame app={app} actions={actions}>
      <MealFormScreen view={view} calls={calls} photoUrlOf={form.photos.urlOf} />
    </Frame>
  );
}
