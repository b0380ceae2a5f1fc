import type { ReactionFormView } from "../views/reactionFormView.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { TextField } from "./parts/TextField.js";

export interface ReactionFormCalls {
  /** "0" to "3". */
  readonly onSeverity: (severity: string) => void;
  readonly onOnset: (onset: string) => void;
  readonly onSymptom: (symptom: string, chosen: boolean) => void;
  readonly onOwn: (text: string) => void;
  readonly onNote: (note: string) => void;
}

/** How it felt afterwards; the emergency line stands first. Its actions are `FormActions`. */
export function ReactionFormScreen({
  view,
  calls,
}: {
  readonly view: ReactionFormView;
  readonly calls: ReactionFormCalls;
}) {
  const { emergency } = view;
  return (
    <form class="stack" onSubmit={(event) => event.preventDefault()}>
      <div
        class={emergency.urgent ? "emergency emergency--urgent" : "emergency"}
        role={emergency.urgent ? "alert" : "note"}
      >
        <strong>{emergency.title}</strong>
        <p>{emergency.text}</p>
      </div>
      <PageHead title={view.title} />
      <Choices
        name="severity"
        legend={view.severity.label}
        options={view.severity.options}
        onChoose={calls.onSeverity}
      />
      <Choices
        name="symptoms"
        legend={view.symptoms.label}
        options={view.symptoms.options}
        onChoose={calls.onSymptom}
        many
      />
      <TextField id="symptom-own" label={view.own.label} value={view.own.value} onInput={calls.onOwn} />
      <Choices name="onset" legend={view.onset.label} options={view.onset.options} onChoose={calls.onOnset} />
      <TextField
        id="reaction-note"
        label={view.note.label}
        value={view.note.value}
        lines={3}
        maxLength={5000}
        onInput={calls.onNote}
      />
      <p class="quiet">{view.doctor}</p>
    </form>
  );
}
