import { useState } from "preact/hooks";
import { SEVERITIES, type Allergy, type DietProfile } from "../../diet/profile.js";
import { AllergiesActions, AllergiesScreen, AllergyFormScreen } from "../../screens/AllergiesScreen.js";
import { FormActions } from "../../screens/parts/FormActions.js";
import type { AllergyDraft } from "../../views/allergiesView.js";
import { Frame } from "../places/Frame.js";
import { allergyDraft } from "./allergyDraft.js";
import { withAllergy, withoutAllergy } from "./profileEdits.js";
import { useTables, type YouTables } from "./useTables.js";
import type { YouPageProps } from "./youPage.js";

interface Props extends YouPageProps {
  /** What the address names: a place in the list, "new", or nothing for the list itself. */
  readonly entry: string | undefined;
}

/** The allergies, and the form of one. */
export function AllergiesPage(props: Props) {
  const { app, editor, entry, onBack } = props;
  const tables = useTables();
  if (tables === null) return <Frame app={app}>{null}</Frame>;
  const { profile } = editor.shown.value;
  const index = entry === undefined || entry === "new" ? -1 : Number(entry);
  const allergy = profile.allergies[index];
  if (entry === "new" || allergy !== undefined)
    return <AllergyPage key={entry} {...props} tables={tables} index={index} allergy={allergy} />;
  const view = tables.allergiesView(profile, app.preferences.words.value);
  const open = (place: string) => app.router.go("you", "allergies", place);
  return (
    <Frame app={app} actions={<AllergiesActions label={view.add} onAdd={() => open("new")} />}>
      <AllergiesScreen view={view} calls={{ onBack, onEdit: (place) => open(String(place)) }} />
    </Frame>
  );
}

interface FormProps extends Props {
  readonly tables: YouTables;
  /** -1 for a new one. */
  readonly index: number;
  readonly allergy: Allergy | undefined;
}

function AllergyPage({ app, editor, tables, index, allergy }: FormProps) {
  const [draft, setDraft] = useState(() => allergyDraft(allergy, tables));
  const { jurisdiction } = editor.shown.value.profile;
  const view = tables.allergyFormView(draft, jurisdiction, app.preferences.words.value);
  const allergen = tables.chosenAllergen(draft);
  const set = (patch: Partial<AllergyDraft>) => setDraft({ ...draft, ...patch });
  const toList = () => app.router.replace("you", "allergies");

  async function keep(change: (now: DietProfile) => DietProfile): Promise<boolean> {
    const kept = await editor.editProfile(change);
    if (kept) toList();
    return kept;
  }

  async function remove(): Promise<void> {
    if (allergy === undefined || !(await keep((now) => withoutAllergy(now, index)))) return;
    const words = app.preferences.words.value;
    app.toasts.show(
      words.text.you.allergyRemoved(tables.substanceName(allergy.allergen, words)),
      () => void editor.editProfile((now) => withAllergy(now, -1, allergy)),
    );
  }

  const save = () => {
    if (allergen === null) return;
    const { severity, note } = draft;
    void keep((now) => withAllergy(now, index, { allergen, severity, note: note.trim() }));
  };
  const calls = {
    onAllergen: (choice: string) => set({ choice }),
    onOwn: (own: string) => set({ own }),
    onSeverity: (id: string) => set({ severity: SEVERITIES.find((known) => known === id) ?? draft.severity }),
    onNote: (note: string) => set({ note }),
    onRemove: () => void remove(),
  };
  const actions = (
    <FormActions
      save={view.save}
      cancel={view.cancel}
      blocked={allergen === null}
      onSave={save}
      onCancel={toList}
    />
  );
  return (
    <Frame app={app} actions={actions}>
      <AllergyFormScreen view={view} calls={calls} />
    </Frame>
  );
}
