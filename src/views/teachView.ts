import type { TeachProblem, TeachState } from "../flows/teachState.js";
import type { RefreshNeed } from "../nose/refreshNeed.js";
import { numberText, percentText } from "../text/formats.js";
import { offerView, type OfferView, type OfferWords } from "./offerView.js";
import type { OptionView } from "./plateHomeView.js";
import { LEAST_FRESH_PLATES } from "./refreshView.js";

/** How a nose is to be taught. */
export type TeachHow = "anew" | "refresh";

/** Teaching, from the tap to the person's word on the new nose. */
export type TeachView =
  | {
      readonly kind: "idle";
      readonly samples: string;
      /** Anew, or the nose in use brought up to date; null where there is nothing to refresh. */
      readonly how: {
        readonly label: string;
        readonly options: readonly OptionView[];
        readonly hint: string | null;
      } | null;
      /** What a refresh would take; null where it can be chosen, or there is no nose. */
      readonly refreshNone: string | null;
      readonly name: { readonly label: string; readonly value: string };
      readonly start: string;
      /** Why it cannot start. */
      readonly blocked: string | null;
    }
  | {
      readonly kind: "teaching";
      readonly running: string;
      readonly progress: number;
      readonly progressText: string;
      readonly stay: string;
      readonly stop: string;
      /** What the button does: the checks can be left out, teaching itself is stopped. */
      readonly stops: "teaching" | "checks";
      readonly stopping: boolean;
    }
  | { readonly kind: "comparing"; readonly running: string }
  | OfferView
  | {
      readonly kind: "problem";
      readonly problemTitle: string;
      readonly problemText: string;
      readonly dismiss: string;
    };

export interface TeachPageView {
  readonly title: string;
  readonly back: string;
  readonly text: string | undefined;
  readonly body: TeachView;
}

export interface TeachPageState {
  readonly teaching: TeachState;
  readonly samples: number;
  readonly plates: number;
  readonly name: string;
  /** What there is to refresh with; null without a nose in use. */
  readonly refresh: RefreshNeed | null;
  readonly how: TeachHow;
  /** Id of the connected sniffer; null if none is. */
  readonly connectedSniffer: string | null;
  /** Fraction. */
  readonly acceptedMissRate: number;
}

/** Words of teaching. */
export function teachView(state: TeachPageState, words: OfferWords): TeachPageView {
  const { teach, back } = words.text.nose;
  const { kind } = state.teaching;
  const body = bodyOf(state, words);
  if (kind === "proposed" || kind === "comparing")
    return { title: words.text.offer.title, back, text: undefined, body };
  return { title: teach.title, back, text: teach.text, body };
}

function bodyOf(state: TeachPageState, words: OfferWords): TeachView {
  const { teach: text } = words.text.nose;
  const { teaching } = state;
  switch (teaching.kind) {
    case "idle":
      return idleOf(state, words);
    case "teaching":
      return teachingOf(teaching, words);
    case "comparing":
      return { kind: "comparing", running: words.text.offer.comparing };
    case "proposed":
      return offerView(teaching, state.connectedSniffer, state.acceptedMissRate, words);
    case "problem":
      return {
        kind: "problem",
        problemTitle: text.problemTitle,
        problemText: problemText(teaching.problem, words),
        dismiss: text.dismiss,
      };
  }
}

function teachingOf(teaching: Extract<TeachState, { kind: "teaching" }>, words: OfferWords): TeachView {
  const { teach: text } = words.text.nose;
  const checks = teaching.stage === "checks";
  return {
    kind: "teaching",
    running: checks ? text.checking : teaching.refresh ? text.refreshing : text.running,
    progress: teaching.done ?? 0,
    progressText:
      teaching.done === null ? text.starting : text.progress(percentText(teaching.done, words.formats)),
    stay: checks ? text.checkingText : text.stay,
    stop: teaching.cancelling ? text.stopping : checks ? text.skipChecks : text.stop,
    stops: teaching.stage,
    stopping: teaching.cancelling,
  };
}

function idleOf({ samples, plates, name, refresh, how }: TeachPageState, words: OfferWords): TeachView {
  const { teach: text } = words.text.nose;
  const { offer } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const canRefresh = refresh !== null && refresh.freshPlates >= LEAST_FRESH_PLATES;
  const isRefresh = canRefresh && how === "refresh";
  const option = (id: TeachHow, label: string) => ({ id, label, chosen: (id === "refresh") === isRefresh });
  return {
    kind: "idle",
    samples: text.samples(whole(samples), whole(plates)),
    how: canRefresh
      ? {
          label: offer.how,
          options: [option("anew", offer.anew), option("refresh", offer.refresh(whole(refresh.freshPlates)))],
          hint: isRefresh ? refreshHint(refresh, words) : null,
        }
      : null,
    refreshNone: refresh === null || canRefresh ? null : offer.refreshNone,
    name: { label: text.name, value: name },
    start: isRefresh ? offer.refreshStart : text.start,
    blocked: samples === 0 ? text.noSamples : null,
  };
}

/** Says so where the refreshed nose would forget most of what the old one was taught. */
function refreshHint({ platesKnown, platesTaught }: RefreshNeed, words: OfferWords): string {
  const { offer } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  if (platesKnown >= platesTaught) return offer.refreshHint;
  return `${offer.refreshHint} ${offer.refreshKnown(whole(platesKnown), whole(platesTaught))}`;
}

function problemText(problem: TeachProblem, words: OfferWords): string {
  const { problems } = words.text.nose.teach;
  switch (problem.kind) {
    case "failed":
    case "workerCrashed":
    case "storage":
      return problems[problem.kind](problem.detail);
    case "tooFewFresh":
      return problems.tooFewFresh(numberText(problem.plates, words.formats));
    default:
      return problems[problem.kind];
  }
}
