import type { TeachProblem, TeachState } from "../flows/teachState.js";
import type { Nose } from "../nose/nose.js";
import type { GroupReport, Rate } from "../nose/report.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";
import { groupName } from "./groupName.js";
import { rateView } from "./rateView.js";

/** One number of the old nose beside that of the new one. */
export interface ComparedView {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly beforeText: string;
  readonly afterText: string;
  readonly change: string;
}

/** Teaching, from the tap to the person's word on the new nose. */
export type TeachView =
  | {
      readonly kind: "idle";
      readonly samples: string;
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
      readonly stopping: boolean;
    }
  | {
      readonly kind: "proposed";
      readonly proposedTitle: string;
      readonly proposedText: string;
      readonly before: string;
      readonly after: string;
      readonly groups: readonly {
        readonly group: string;
        readonly name: string;
        readonly plates: string;
        readonly rows: readonly ComparedView[];
      }[];
      readonly accept: string;
      readonly reject: string;
      readonly kept: string;
    }
  | {
      readonly kind: "problem";
      readonly problemTitle: string;
      readonly problemText: string;
      readonly dismiss: string;
    };

export interface TeachPageView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly body: TeachView;
}

export interface TeachPageState {
  readonly teaching: TeachState;
  readonly samples: number;
  readonly plates: number;
  readonly name: string;
}

type TeachWords = Words<"common" | "nose">;

/** Words of teaching. */
export function teachView(state: TeachPageState, words: TeachWords): TeachPageView {
  const { teach, back } = words.text.nose;
  return { title: teach.title, back, text: teach.text, body: bodyOf(state, words) };
}

function bodyOf(state: TeachPageState, words: TeachWords): TeachView {
  const { teach: text } = words.text.nose;
  const { teaching } = state;
  switch (teaching.kind) {
    case "idle":
      return idleOf(state, words);
    case "teaching":
      return {
        kind: "teaching",
        running: text.running,
        progress: teaching.done ?? 0,
        progressText:
          teaching.done === null ? text.starting : text.progress(percentText(teaching.done, words.formats)),
        stay: text.stay,
        stop: teaching.cancelling ? text.stopping : text.stop,
        stopping: teaching.cancelling,
      };
    case "proposed":
      return proposedOf(teaching.nose, teaching.before, words);
    case "problem":
      return {
        kind: "problem",
        problemTitle: text.problemTitle,
        problemText: problemText(teaching.problem, words),
        dismiss: text.dismiss,
      };
  }
}

function idleOf({ samples, plates, name }: TeachPageState, words: TeachWords): TeachView {
  const { teach: text } = words.text.nose;
  return {
    kind: "idle",
    samples: text.samples(numberText(samples, words.formats), numberText(plates, words.formats)),
    name: { label: text.name, value: name },
    start: text.start,
    blocked: samples === 0 ? text.noSamples : null,
  };
}

function problemText(problem: TeachProblem, words: TeachWords): string {
  const { problems } = words.text.nose.teach;
  switch (problem.kind) {
    case "failed":
    case "workerCrashed":
    case "storage":
      return problems[problem.kind](problem.detail);
    default:
      return problems[problem.kind];
  }
}

function proposedOf(nose: Nose, before: Nose | null, words: TeachWords): TeachView {
  const { teach: text, platesOf } = words.text.nose;
  const whole = (value: number) => numberText(value, words.formats);
  return {
    kind: "proposed",
    proposedTitle: text.proposedTitle,
    proposedText: text.proposedText,
    before: before === null ? text.noBefore : `${text.before}: ${before.name}`,
    after: `${text.after}: ${nose.name}`,
    groups: nose.report.groups.map((group) => ({
      group: group.group,
      name: groupName(group.group, words),
      plates: platesOf(whole(group.platesPresent), whole(group.platesAbsent)),
      rows: comparedRows(group, before, words),
    })),
    accept: text.accept,
    reject: before === null ? text.rejectFirst : text.reject,
    kept: text.kept,
  };
}

function comparedRows(group: GroupReport, before: Nose | null, words: TeachWords): ComparedView[] {
  const { nose: text } = words.text;
  const old = before?.report.groups.find((one) => one.group === group.group);
  return [
    compared(text.found, old?.sensitivity ?? null, group.sensitivity, words),
    compared(text.quiet, old?.specificity ?? null, group.specificity, words),
  ];
}

function compared(label: string, before: Rate | null, after: Rate | null, words: TeachWords): ComparedView {
  const { change } = words.text.nose.teach;
  const old = rateView(label, before, words);
  const fresh = rateView(label, after, words);
  return {
    label,
    before: old.percent ?? "–",
    after: fresh.percent ?? "–",
    beforeText: old.text,
    afterText: fresh.text,
    change: change[changeOf(before, after)],
  };
}

/** Better or worse only where the exact intervals do not overlap. */
function changeOf(before: Rate | null, after: Rate | null): "better" | "worse" | "same" | "new" {
  if (before === null || after === null) return "new";
  if (after.low > before.high) return "better";
  return after.high < before.low ? "worse" : "same";
}
