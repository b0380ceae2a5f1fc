import type { TruthFormView } from "../views/truthFormView.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { TextField } from "./parts/TextField.js";

export interface TruthFormCalls {
  /** `truth` is "present", "absent" or "unknown". */
  readonly onGroup: (group: string, truth: string) => void;
  readonly onSource: (source: string) => void;
  readonly onNote: (note: string) => void;
}

/** What was really in it; its actions are `FormActions`. */
export function TruthFormScreen({
  view,
  calls,
}: {
  readonly view: TruthFormView;
  readonly calls: TruthFormCalls;
}) {
  return (
    <form class="stack" onSubmit={(event) => event.preventDefault()}>
      <PageHead title={view.title} text={view.text} />
      {view.groups.map(({ group, name, options }) => (
        <Choices
          key={group}
          name={`truth-${group}`}
          legend={name}
          options={options}
          onChoose={(truth) => calls.onGroup(group, truth)}
        />
      ))}
      <Choices
        name="truth-source"
        legend={view.source.label}
        options={view.source.options}
        onChoose={calls.onSource}
      />
      <TextField
        id="truth-note"
        label={view.note.label}
        value={view.note.value}
        lines={2}
        onInput={calls.onNote}
      />
    </form>
  );
}
