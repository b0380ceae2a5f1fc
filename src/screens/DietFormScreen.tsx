import type { DietFormView } from "../views/dietFormView.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { TextField } from "./parts/TextField.js";

export interface DietFormCalls {
  readonly onBack: () => void;
  readonly onDiet: (diet: string, chosen: boolean) => void;
  readonly onGroup: (group: string, chosen: boolean) => void;
  readonly onOwnWords: (text: string) => void;
}

/** Diets, groups to smell for, own words. Each change is kept at once. */
export function DietFormScreen({
  view,
  calls,
}: {
  readonly view: DietFormView;
  readonly calls: DietFormCalls;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      <Choices
        name="diets"
        legend={view.diets.label}
        legendHidden
        many
        rows
        options={view.diets.options}
        hint={view.diets.note}
        onChoose={calls.onDiet}
      />
      <Choices
        name="groups"
        legend={view.groups.label}
        many
        options={view.groups.options}
        hint={view.groups.text}
        onChoose={calls.onGroup}
      />
      <TextField
        id="own-words"
        label={view.ownWords.label}
        hint={view.ownWords.hint}
        value={view.ownWords.value}
        lines={3}
        maxLength={2000}
        onInput={calls.onOwnWords}
      />
    </div>
  );
}
