import type { AllergiesView, AllergyFormView } from "../views/allergiesView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Choices } from "./parts/Choices.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { SelectField } from "./parts/SelectField.js";
import { TextField } from "./parts/TextField.js";

export interface AllergiesCalls {
  readonly onBack: () => void;
  readonly onEdit: (index: number) => void;
}

/** The allergies, each with how serious it is. */
export function AllergiesScreen({
  view,
  calls,
}: {
  readonly view: AllergiesView;
  readonly calls: AllergiesCalls;
}) {
  return (
    <div class="stack">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      {view.none !== null && <p>{view.none}</p>}
      <ul class="stack">
        {view.items.map((item) => (
          <li key={item.index}>
            <button
              type="button"
              class={item.grave ? "allergy allergy--grave" : "allergy"}
              onClick={() => calls.onEdit(item.index)}
            >
              <span class="meal-row__dish">{item.name}</span>
              <span>{item.severity}</span>
              {item.note !== "" && <span class="small quiet">{item.note}</span>}
            </button>
          </li>
        ))}
      </ul>
      {view.items.length > 0 && <Notice strong>{view.steam}</Notice>}
    </div>
  );
}

/** The one action of the page. */
export function AllergiesActions({ label, onAdd }: { readonly label: string; readonly onAdd: () => void }) {
  return (
    <ActionBar>
      <Button look="main" big wide onClick={onAdd}>
        {label}
      </Button>
    </ActionBar>
  );
}

export interface AllergyFormCalls {
  readonly onAllergen: (choice: string) => void;
  readonly onOwn: (text: string) => void;
  readonly onSeverity: (severity: string) => void;
  readonly onNote: (note: string) => void;
  readonly onRemove: () => void;
}

/** One allergy as a form; its actions are `FormActions`. */
export function AllergyFormScreen({
  view,
  calls,
}: {
  readonly view: AllergyFormView;
  readonly calls: AllergyFormCalls;
}) {
  return (
    <form class="stack" onSubmit={(event) => event.preventDefault()}>
      <PageHead title={view.title} />
      <SelectField
        id="allergen"
        label={view.allergen.label}
        hint={view.allergen.hint}
        options={view.allergen.options}
        onChoose={calls.onAllergen}
      />
      {view.own !== null && (
        <TextField
          id="allergen-own"
          label={view.own.label}
          value={view.own.value}
          fault={view.own.fault}
          onInput={calls.onOwn}
        />
      )}
      {view.legal !== null && <Notice>{view.legal}</Notice>}
      <Choices
        name="allergy-severity"
        legend={view.severity.label}
        rows
        options={view.severity.options}
        onChoose={calls.onSeverity}
      />
      <TextField
        id="allergy-note"
        label={view.note.label}
        hint={view.note.hint}
        value={view.note.value}
        onInput={calls.onNote}
      />
      {view.remove !== null && (
        <Button look="quiet" onClick={calls.onRemove}>
          {view.remove}
        </Button>
      )}
    </form>
  );
}
