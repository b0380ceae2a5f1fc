import type { Words } from "../text/catalogue.js";

/** One caution, worded. */
export interface CautionView {
  readonly id: string;
  readonly text: string;
  /** For whom and by which rule; null where the next caution says the same, or only the text was kept. */
  readonly because: string | null;
}

/** The cautions beside a finding, or why there are none. They are only ever added. */
export interface CautionsView {
  readonly title: string;
  readonly items: readonly CautionView[];
  readonly empty: string;
}

/** Cautions that stand beside a finding. Who has not said what they avoid is told that, not that there are none. */
export function standingCautions(
  items: readonly CautionView[],
  hasProfile: boolean,
  { text: { finding } }: Words<"finding">,
): CautionsView {
  const empty = hasProfile ? finding.cautionsNone : finding.cautionsNoProfile;
  return { title: finding.cautionsTitle, items, empty };
}
