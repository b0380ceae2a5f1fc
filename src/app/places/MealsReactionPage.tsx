import { FormActions } from "../../screens/parts/FormActions.js";
import { ReactionFormScreen } from "../../screens/ReactionFormScreen.js";
import { reactionFormView } from "../../views/reactionFormView.js";
import type { AppModel } from "../appModel.js";
import { saveReaction } from "../meals/mealEdits.js";
import { mealsListOf } from "../meals/mealsListOf.js";
import { reactionDraftOf, reactionOf, withOnset, withSeverity, withSymptom } from "../meals/reactionDraft.js";
import { createSmallForm, reactionSchema } from "../meals/smallForm.js";
import { useForm } from "../meals/useControl.js";
import { Frame } from "./Frame.js";
import { MealsMissing } from "./MealsTrouble.js";

const KIND = { name: "reaction", schema: reactionSchema, draftOf: reactionDraftOf } as const;

/** How it felt afterwards. */
export function MealsReactionPage({ app, mealId }: { readonly app: AppModel; readonly mealId: string }) {
  const form = useForm(() => createSmallForm(app.ports, mealId, KIND), mealId);
  const open = form.open.value;
  if (open === "missing") return <MealsMissing app={app} />;
  if (open === null) return <Frame app={app}>{null}</Frame>;
  const view = reactionFormView(open.draft, app.preferences.words.value);
  const save = async () => {
    const saved = await form.save((meal, draft, done) =>
      saveReaction(app.ports, meal.id, (before) => reactionOf(draft, before), done),
    );
    if (saved?.ok === false) app.tellStoreError(saved.error);
    if (saved?.ok !== true) return;
    mealsListOf(app).put(saved.value);
    app.router.replace("meals", mealId);
  };
  const cancel = async () => {
    await form.discard();
    app.router.replace("meals", mealId);
  };
  const calls = {
    onSeverity: (id: string) => form.edit((draft) => withSeverity(draft, id)),
    onOnset: (id: string) => form.edit((draft) => withOnset(draft, id)),
    onSymptom: (id: string, chosen: boolean) => form.edit((draft) => withSymptom(draft, id, chosen)),
    onOwn: (own: string) => form.edit((draft) => ({ ...draft, own })),
    onNote: (note: string) => form.edit((draft) => ({ ...draft, note })),
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
      <ReactionFormScreen view={view} calls={calls} />
    </Frame>
  );
}
