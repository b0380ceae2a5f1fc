import type { KeepSampleView } from "../views/keepSampleView.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { Switch } from "./parts/Switch.js";
import { TextField } from "./parts/TextField.js";

export interface KeepSampleCalls {
  readonly onDish: (dish: string) => void;
  /** `truth` is "present", "absent" or "unknown". */
  readonly onGroup: (group: string, truth: string) => void;
  readonly onSamePlate: (on: boolean) => void;
}

/** What was on the plate, to keep its sniff as a sample; its actions are `FormActions`. */
export function KeepSampleScreen({
  view,
  calls,
}: {
  readonly view: KeepSampleView;
  readonly calls: KeepSampleCalls;
}) {
  return (
    <form class="stack" onSubmit={(event) => event.preventDefault()}>
      <PageHead title={view.title} text={view.text} />
      <TextField id="sample-dish" label={view.dish.label} value={view.dish.value} onInput={calls.onDish} />
      {view.groups.map(({ group, name, options }) => (
        <Choices
          key={group}
          name={`sample-${group}`}
          legend={name}
          options={options}
          onChoose={(truth) => calls.onGroup(group, truth)}
        />
      ))}
      {view.samePlate !== null && (
        <Switch
          id="same-plate"
          label={view.samePlate.label}
          hint={view.samePlate.hint}
          on={view.samePlate.on}
          onChange={calls.onSamePlate}
        />
      )}
      {view.blocked !== null && <p class="quiet">{view.blocked}</p>}
    </form>
  );
}
