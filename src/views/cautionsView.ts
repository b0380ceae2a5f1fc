import type { Words } from "../text/catalogue.js";

/** One caution, worded. */
export interface CautionView {
  readonly id: string;
  readonly text: string;
  /** Which word set it off and which rule says so; null where only the text was kept. */
  readonly because: string | null;
}

/** The cautions beside a finding, or why there are none. They are only ever added. */
export interface CautionsView {
  readonly title: string;
  readonly items: readonly CautionView[];
  readonly empty: string;
}

/** Cautions that stand beside a finding. */
export function standingCautions(items: readonly CautionView[], { text }: Words<"finding">): CautionsView {
  return { title: text.finding.cautionsTitle, items, empty: text.finding.cautionsNone };
}
