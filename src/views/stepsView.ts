import type { CheckState } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";

/** Where a check stands in its row of steps. */
export interface StepsView {
  readonly label: string;
  readonly items: readonly { readonly label: string; readonly state: "before" | "now" | "after" }[];
}

const ORDER = ["warming", "cleanAir", "overPlate", "done"] as const;
type StepId = (typeof ORDER)[number];

/** Waiting over the plate and sniffing it are one step to the person who does it. */
const STEP_OF: Readonly<Record<Exclude<CheckState["phase"], "idle" | "interrupted">, StepId>> = {
  warming: "warming",
  cleanAir: "cleanAir",
  overPlate: "overPlate",
  headspace: "overPlate",
  done: "done",
};

export type ShownPhase = keyof typeof STEP_OF;

export function stepsView(phase: ShownPhase, { text }: Words<"check">): StepsView {
  const at = ORDER.indexOf(STEP_OF[phase]);
  return {
    label: text.check.stepsLabel,
    items: ORDER.map((step, i) => ({
      label: text.check.steps[step],
      state: i < at ? "before" : i === at ? "now" : "after",
    })),
  };
}
