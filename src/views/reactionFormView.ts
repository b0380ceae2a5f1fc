import type { Severity } from "../meals/meal.js";
import type { Words } from "../text/catalogue.js";
import type { OptionView } from "./plateHomeView.js";

/** How the person felt, as a form. The emergency line always stands first. */
export interface ReactionFormView {
  readonly title: string;
  readonly emergency: { readonly title: string; readonly text: string; readonly urgent: boolean };
  readonly severity: { readonly label: string; readonly options: readonly OptionView[] };
  readonly onset: { readonly label: string; readonly options: readonly OptionView[] };
  readonly symptoms: { readonly label: string; readonly options: readonly OptionView[] };
  readonly own: { readonly label: string; readonly value: string };
  readonly note: { readonly label: string; readonly value: string };
  readonly doctor: string;
  readonly save: string;
  readonly cancel: string;
}

export interface ReactionDraft {
  readonly severity: Severity;
  readonly onset: OnsetId;
  /** Ids of `SYMPTOMS`. */
  readonly symptoms: readonly string[];
  readonly own: string;
  readonly note: string;
}

/** Each choice of onset, as the time that is kept. Middle of the stretch; common practice. */
export const ONSETS = {
  unknown: undefined,
  minutes: 10 * 60_000,
  hour: 40 * 60_000,
  hours: 3 * 3_600_000,
  day: 16 * 3_600_000,
} as const;
export type OnsetId = keyof typeof ONSETS;

const SEVERITY_IDS = ["none", "mild", "moderate", "severe"] as const;

/** Kept by these ids; anything else is the person's own word. */
export const SYMPTOMS = [
  "mouth",
  "hives",
  "swelling",
  "breathing",
  "stomach",
  "vomiting",
  "diarrhoea",
  "bloating",
  "headache",
  "faint",
] as const;

/** Signs of anaphylaxis: breathing, swelling of face or throat, faintness. Common practice of allergy plans. */
const URGENT: readonly string[] = ["swelling", "breathing", "faint"];

type ReactionWords = Words<"common" | "meals">;

/** Words of the reaction form. */
export function reactionFormView(draft: ReactionDraft, words: ReactionWords): ReactionFormView {
  const { reaction: text } = words.text.meals;
  return {
    title: text.title,
    emergency: {
      title: text.emergencyTitle,
      text: text.emergency,
      urgent: draft.symptoms.some((symptom) => URGENT.includes(symptom)),
    },
    severity: {
      label: text.severity,
      options: SEVERITY_IDS.map((id, i) => ({
        id: String(i),
        label: text.severities[id],
        chosen: i === draft.severity,
      })),
    },
    onset: {
      label: text.onset,
      options: (Object.keys(ONSETS) as OnsetId[]).map((id) => ({
        id,
        label: text.onsets[id],
        chosen: id === draft.onset,
      })),
    },
    symptoms: {
      label: text.symptoms,
      options: SYMPTOMS.map((id) => ({
        id,
        label: symptomLabel(id, words),
        chosen: draft.symptoms.includes(id),
      })),
    },
    own: { label: text.own, value: draft.own },
    note: { label: text.note, value: draft.note },
    doctor: text.doctor,
    save: text.save,
    cancel: words.text.common.cancel,
  };
}

export function severityLabel(severity: Severity, { text }: Words<"meals">): string {
  return text.meals.reaction.severities[SEVERITY_IDS[severity]];
}

/** A known symptom in words; the person's own word stands as it is. */
export function symptomLabel(symptom: string, { text }: Words<"meals">): string {
  return text.meals.reaction.symptomNames[symptom] ?? symptom;
}

/** The choice that a kept onset came from: the longest that is not longer. */
export function onsetId(onsetMs: number | undefined): OnsetId {
  if (onsetMs === undefined) return "unknown";
  const ids = (Object.keys(ONSETS) as OnsetId[]).filter((id) => (ONSETS[id] ?? Infinity) <= onsetMs);
  return ids.at(-1) ?? "minutes";
}

export function onsetLabel(onsetMs: number | undefined, { text }: Words<"meals">): string {
  return text.meals.reaction.onsets[onsetId(onsetMs)];
}
