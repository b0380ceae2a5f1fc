import type { GroupTruths } from "../kernel/groups.js";
import type { Words } from "../text/catalogue.js";
import { groupName } from "./groupName.js";
import type { OptionView } from "./plateHomeView.js";
import { truthOptions } from "./truthFormView.js";

/** Saying what was on a plate, to keep its sniff as a sample. */
export interface KeepSampleView {
  readonly title: string;
  readonly text: string;
  readonly dish: { readonly label: string; readonly value: string };
  readonly groups: readonly {
    readonly group: string;
    readonly name: string;
    readonly options: readonly OptionView[];
  }[];
  /** null where no sniff went before. */
  readonly samePlate: { readonly label: string; readonly hint: string; readonly on: boolean } | null;
  readonly save: string;
  readonly cancel: string;
  /** Why it cannot be kept yet. */
  readonly blocked: string | null;
}

export interface KeepSampleState {
  readonly dish: string;
  readonly truths: GroupTruths;
  readonly groups: readonly string[];
  /** null where no sniff went before. */
  readonly samePlate: boolean | null;
}

/** Words of the form. */
export function keepSampleView(
  state: KeepSampleState,
  words: Words<"common" | "meals" | "nose">,
): KeepSampleView {
  const { keep: text } = words.text.nose;
  const known = Object.values(state.truths).some((truth) => truth !== "unknown");
  return {
    title: text.title,
    text: text.text,
    dish: { label: text.dish, value: state.dish },
    groups: state.groups.map((group) => ({
      group,
      name: groupName(group, words),
      options: truthOptions(state.truths[group] ?? "unknown", words),
    })),
    samePlate:
      state.samePlate === null
        ? null
        : { label: text.samePlate, hint: text.samePlateHint, on: state.samePlate },
    save: text.save,
    cancel: words.text.common.cancel,
    blocked: known ? null : text.none,
  };
}
