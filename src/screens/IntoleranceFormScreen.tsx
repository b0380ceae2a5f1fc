import type { IntoleranceFormView } from "../views/dietFormView.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { Switch } from "./parts/Switch.js";
import { TextField } from "./parts/TextField.js";

export interface IntoleranceFormCalls {
  readonly onBack: () => void;
  readonly onCoeliac: (on: boolean) => void;
  readonly onKnown: (intolerance: string, chosen: boolean) => void;
  readonly onOwn: (text: string) => void;
}

/** Coeliac disease and intolerances, kept apart. */
export function IntoleranceFormScreen({
  view,
  calls,
}: {
  readonly view: IntoleranceFormView;
  readonly calls: IntoleranceFormCalls;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} back={{ label: view.back, onBack: calls.onBack }} />
      <section class="card">
        <h2>{view.coeliac.title}</h2>
        <p class="quiet">{view.coeliac.text}</p>
        <Switch id="coeliac" label={view.coeliac.label} on={view.coeliac.on} onChange={calls.onCoeliac} />
      </section>
      <section class="card">
        <Choices
          name="intolerances"
          legend={view.known.label}
          many
          options={view.known.options}
          hint={view.known.text}
          onChoose={calls.onKnown}
        />
        <TextField
          id="own-intolerances"
          label={view.own.label}
          hint={view.own.hint}
          value={view.own.value}
          lines={2}
          maxLength={2000}
          onInput={calls.onOwn}
        />
      </section>
    </div>
  );
}
