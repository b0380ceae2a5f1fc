import type { ComponentChildren } from "preact";
import type { Result } from "../../kernel/result.js";
import type { Meal } from "../../meals/meal.js";
import { FormActions } from "../../screens/parts/FormActions.js";
import type { StoreError } from "../../store/storeError.js";
import type { AppModel } from "../appModel.js";
import { mealsListOf } from "../meals/mealsListOf.js";
import { createSmallForm, type SmallForm, type SmallFormKind } from "../meals/smallForm.js";
import { useForm } from "../meals/useControl.js";
import { Frame } from "./Frame.js";
import { MealsMissing } from "./MealsTrouble.js";

/** A form about one meal, drawn: its words for the two buttons, and what stands above them. */
export interface DrawnForm {
  readonly view: { readonly save: string; readonly cancel: string };
  readonly screen: ComponentChildren;
}

interface Props<T> {
  readonly app: AppModel;
  readonly mealId: string;
  readonly kind: SmallFormKind<T>;
  /** Keeps what the form says; told which draft is done with it. */
  readonly write: (meal: Meal, draft: T, done: readonly string[]) => Promise<Result<Meal, StoreError>>;
  readonly draw: (meal: Meal, draft: T, edit: SmallForm<T>["edit"]) => DrawnForm;
}

/** A form about one meal, such as its truth or the reaction to it: opened, kept, left. */
export function SmallFormPage<T>({ app, mealId, kind, write, draw }: Props<T>) {
  const form = useForm(() => createSmallForm(app.ports, mealId, kind), mealId);
  const open = form.open.value;
  if (open === "missing") return <MealsMissing app={app} />;
  if (open === null) return <Frame app={app}>{null}</Frame>;
  const { view, screen } = draw(open.meal, open.draft, form.edit);
  const save = async () => {
    const saved = await form.save(write);
    if (saved?.ok === false) app.tellStoreError(saved.error);
    if (saved?.ok !== true) return;
    mealsListOf(app).put(saved.value);
    app.router.replace("meals", mealId);
  };
  const cancel = async () => {
    await form.discard();
    app.router.replace("meals", mealId);
  };
  const actions = (
    <FormActions
      save={view.save}
      cancel={view.cancel}
      onSave={() => void save()}
      onCancel={() => void cancel()}
    />
  );
  return (
    <Frame app={app} actions={actions}>
      {screen}
    </Frame>
  );
}
