import { PRACTICE_FAULTS, type PracticeFault } from "../kernel/practiceFault.js";
import type { SnifferState } from "../flows/snifferState.js";
import type { Words } from "../text/catalogue.js";
import { snifferView, type SnifferContext, type SnifferView } from "./snifferView.js";

/** The page of faults to practise with. */
export interface PracticeView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly sniffer: SnifferView;
  /** A real sniffer is in hand, and nothing can be chosen; null otherwise. */
  readonly real: string | null;
  readonly faultsTitle: string;
  readonly faults: readonly {
    readonly id: PracticeFault;
    readonly label: string;
    readonly hint: string;
    readonly on: boolean;
  }[];
  readonly toPlate: string;
}

export interface PracticeState extends SnifferContext {
  readonly sniffer: SnifferState;
  readonly chosen: readonly PracticeFault[];
}

/** Words of the page of faults. */
export function practiceView(
  state: PracticeState,
  words: Words<"common" | "sniffer" | "practice" | "nose">,
): PracticeView {
  const { practice: text } = words.text;
  const real = isReal(state.sniffer);
  return {
    title: text.title,
    back: words.text.nose.back,
    text: text.text,
    sniffer: snifferView(state.sniffer, state, words),
    real: real ? text.real : null,
    faultsTitle: text.faultsTitle,
    faults: real
      ? []
      : PRACTICE_FAULTS.map((id) => {
          const { name, hint } = text.faults[id];
          return { id, label: name, hint, on: state.chosen.includes(id) };
        }),
    toPlate: text.toPlate,
  };
}

/** Is it a sniffer that measures real air? */
export function isReal(state: SnifferState): boolean {
  if (state.kind === "connecting") return !state.virtual;
  return (state.kind === "ready" || state.kind === "lost") && !state.sniffer.virtual;
}

/** What stands above every page while faults are on. */
export interface FaultsOnView {
  readonly title: string;
  readonly text: string;
  /** null while a check runs: nothing may be tapped by mistake. */
  readonly allOff: string | null;
}

/** @returns null where nothing goes wrong on purpose */
export function faultsOnView(
  chosen: readonly PracticeFault[],
  checkRunning: boolean,
  words: Words<"practice">,
): FaultsOnView | null {
  if (chosen.length === 0) return null;
  const { practice: text } = words.text;
  const names = PRACTICE_FAULTS.filter((fault) => chosen.includes(fault)).map((id) => text.faults[id].name);
  return {
    title: text.onTitle,
    text: text.onText(names.join(" · ")),
    allOff: checkRunning ? null : text.allOff,
  };
}
