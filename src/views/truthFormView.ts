import type { GroupTruth, GroupTruths } from "../kernel/groups.js";
import { TRUTH_SOURCES, type TruthSource } from "../meals/meal.js";
import type { Words } from "../text/catalogue.js";
import { groupName } from "./groupName.js";
import type { OptionView } from "./plateHomeView.js";

/** What was really on the plate, as a form. */
export interface TruthFormView {
  readonly title: string;
  readonly text: string;
  readonly groups: readonly {
    readonly group: string;
    readonly name: string;
    readonly options: readonly OptionView[];
  }[];
  readonly source: { readonly label: string; readonly options: readonly OptionView[] };
  readonly note: { readonly label: string; readonly value: string };
  readonly save: string;
  readonly cancel: string;
}

export interface TruthDraft {
  readonly groups: GroupTruths;
  readonly source: TruthSource;
  readonly note: string;
}

const TRUTHS: readonly GroupTruth[] = ["present", "absent", "unknown"];

/** Words of the form; `groups` are those to ask for, in this order. */
export function truthFormView(
  draft: TruthDraft,
  groups: readonly string[],
  words: Words<"common" | "meals">,
): TruthFormView {
  const { truth: text } = words.text.meals;
  return {
    title: text.title,
    text: text.text,
    groups: groups.map((group) => ({
      group,
      name: groupName(group, words),
      options: truthOptions(draft.groups[group] ?? "unknown", words),
    })),
    source: {
      label: text.source,
      options: TRUTH_SOURCES.map((id) => ({ id, label: text.sources[id], chosen: id === draft.source })),
    },
    note: { label: text.note, value: draft.note },
    save: text.save,
    cancel: words.text.common.cancel,
  };
}

/** In it, not in it, unknown. */
export function truthOptions(chosen: GroupTruth, { text }: Words<"meals">): OptionView[] {
  return TRUTHS.map((id) => ({ id, label: text.meals.truth.options[id], chosen: id === chosen }));
}
