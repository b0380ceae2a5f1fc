import { ReactionFormScreen } from "../../screens/ReactionFormScreen.js";
import { reactionFormView, type ReactionDraft } from "../../views/reactionFormView.js";
import type { AppModel } from "../appModel.js";
import { saveReaction } from "../meals/mealEdits.js";
import { reactionDraftOf, reactionOf, withOnset, withSeverity, withSymptom } from "../meals/reactionDraft.js";
import { reactionSchema, type SmallForm } from "../meals/smallForm.js";
import { SmallFormPage } from "./SmallFormPage.js";

const KIND = { name: "reaction", schema: reactionSchema, draftOf: reactionDraftOf } as const;

/** How it felt afterwards. */
export function MealsReactionPage({ app, mealId }: { readonly app: AppModel; readonly mealId: string }) {
  return (
    <SmallFormPage
      app={app}
      mealId={mealId}
      kind={KIND}
      write={(meal, draft, done) =>
        saveReaction(app.ports, meal.id, (before) => reactionOf(draft, before), done)
      }
      draw={(_meal, draft, edit) => {
        const view = reactionFormView(draft, app.preferences.words.value);
        return { view, screen: <ReactionFormScreen view={view} calls={callsFor(edit)} /> };
      }}
    />
  );
}

const callsFor = (edit: SmallForm<ReactionDraft>["edit"]) => ({
  onSeverity: (id: string) => edit((draft) => withSeverity(draft, id)),
  onOnset: (id: string) => edit((draft) => withOnset(draft, id)),
  onSymptom: (id: string, chosen: boolean) => edit((draft) => withSymptom(draft, id, chosen)),
  onOwn: (own: string) => edit((draft) => ({ ...draft, own })),
  onNote: (note: string) => edit((draft) => ({ ...draft, note })),
});
