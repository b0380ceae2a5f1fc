import { TRUTH_SOURCES } from "../../meals/meal.js";
import { TruthFormScreen } from "../../screens/TruthFormScreen.js";
import { truthFormView, type TruthDraft } from "../../views/truthFormView.js";
import type { AppModel } from "../appModel.js";
import { saveTruth } from "../meals/mealEdits.js";
import { truthSchema, type SmallForm } from "../meals/smallForm.js";
import { groupsToAsk, truthDraftOf, truthOf, withTruth } from "../meals/truthDraft.js";
import { nowIso } from "../ports.js";
import { SmallFormPage } from "./SmallFormPage.js";

const KIND = { name: "truth", schema: truthSchema, draftOf: truthDraftOf } as const;

/** What turned out to be on the plate. */
export function MealsTruthPage({ app, mealId }: { readonly app: AppModel; readonly mealId: string }) {
  return (
    <SmallFormPage
      app={app}
      mealId={mealId}
      kind={KIND}
      write={(meal, draft, done) => saveTruth(app.ports, meal.id, truthOf(draft, nowIso(app.ports)), done)}
      draw={(meal, draft, edit) => {
        const groups = groupsToAsk(meal, app.groups.value);
        const view = truthFormView(draft, groups, app.preferences.words.value);
        return { view, screen: <TruthFormScreen view={view} calls={callsFor(edit)} /> };
      }}
    />
  );
}

const callsFor = (edit: SmallForm<TruthDraft>["edit"]) => ({
  onGroup: (group: string, truth: string) => edit((draft) => withTruth(draft, group, truth)),
  onSource: (id: string) =>
    edit((draft) => ({ ...draft, source: TRUTH_SOURCES.find((known) => known === id) ?? draft.source })),
  onNote: (note: string) => edit((draft) => ({ ...draft, note })),
});
