import { TRUTH_SOURCES } from "../../meals/meal.js";
import { FormActions } from "../../screens/parts/FormActions.js";
import { TruthFormScreen } from "../../screens/TruthFormScreen.js";
import { truthFormView } from "../../views/truthFormView.js";
import type { AppModel } from "../appModel.js";
import { saveTruth } from "../meals/mealEdits.js";
import { mealsListOf } from "../meals/mealsListOf.js";
import { createSmallForm, truthSchema } from "../meals/smallForm.js";
import { groupsToAsk, truthDraftOf, truthOf, withTruth } from "../meals/truthDraft.js";
import { useForm } from "../meals/useControl.js";
import { nowIso } from "../ports.js";
import { Frame } from "./Frame.js";
import { MealsMissing } from "./MealsTrouble.js";

const KIND = { name: "truth", schema: truthSchema, draftOf: truthDraftOf } as const;

/** What turned out to be on the plate. */
export function MealsTruthPage({ app, mealId }: { readonly app: AppModel; readonly mealId: string }) {
  const form = useForm(() => createSmallForm(app.ports, mealId, KIND), mealId);
  const open = form.open.value;
  if (open === "missing") return <MealsMissing app={app} />;
  if (open === null) return <Frame app={app}>{null}</Frame>;
  const groups = groupsToAsk(open.meal, app.groups.value);
  const view = truthFormView(open.draft, groups, app.preferences.words.value);
  const save = async () => {
    const saved = await form.save((meal, draft, done) =>
      saveTruth(app.ports, meal.id, truthOf(draft, nowIso(app.ports)), done),
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
    onGroup: (group: string, truth: string) => form.edit((draft) => withTruth(draft, group, truth)),
    onSource: (id: string) =>
      form.edit((draft) => ({
        ...draft,
        source: TRUTH_SOURCES.find((known) => known === id) ?? draft.source,
      })),
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
      <TruthFormScreen view={view} calls={calls} />
    </Frame>
  );
}
