import type { SnifferState } from "../flows/snifferState.js";
import type { Words } from "../text/catalogue.js";
import { agoText, percentText } from "../text/formats.js";
import type { CautionView, CautionsView } from "./cautionsView.js";
import { durationText } from "./durationText.js";
import { groupName } from "./groupName.js";
import { snifferView, type SnifferContext, type SnifferView } from "./snifferView.js";

/** One of several that can be picked. */
export interface OptionView {
  readonly id: string;
  readonly label: string;
  readonly chosen: boolean;
}

/** Plate before a check. */
export interface PlateHomeView {
  readonly title: string;
  readonly sniffer: SnifferView;
  readonly dish: {
    readonly label: string;
    readonly hint: string;
    readonly value: string;
    readonly suggestionsLabel: string;
    readonly suggestions: readonly string[];
  };
  readonly claims: { readonly label: string; readonly options: readonly OptionView[] };
  readonly cautions: CautionsView & { readonly openYou: string | null };
  readonly questions: { readonly title: string; readonly items: readonly string[] } | null;
  /** What holds whatever the dish; the emergency line is never folded away. */
  readonly standing: {
    readonly title: string;
    readonly emergency: string | null;
    readonly lines: PlateHomeState["standing"];
  } | null;
  readonly kitchenCard: string;
  readonly practice: {
    readonly title: string;
    readonly hint: string;
    readonly label: string;
    readonly options: readonly OptionView[];
  } | null;
  readonly belief: {
    readonly title: string;
    readonly hint: string;
    readonly groups: readonly {
      readonly group: string;
      readonly name: string;
      readonly options: readonly OptionView[];
    }[];
  } | null;
  readonly draft: {
    readonly title: string;
    readonly text: string;
    readonly use: string;
    readonly drop: string;
  } | null;
  readonly check: {
    readonly label: string;
    readonly enabled: boolean;
    /** Why it cannot be tapped, or what will judge. */
    readonly note: string;
  };
}

/** What Plate is made from. Cautions and questions come from the diet engine, already worded. */
export interface PlateHomeState extends SnifferContext {
  readonly sniffer: SnifferState;
  readonly dish: string;
  readonly suggestions: readonly string[];
  /** Ids of the claims that are chosen, from `CLAIM_IDS`. */
  readonly claims: readonly string[];
  readonly cautions: readonly CautionView[];
  readonly questions: readonly string[];
  /** All that warns and judges is loaded. */
  readonly ready: boolean;
  readonly standing: readonly { readonly id: string; readonly text: string }[];
  readonly hasProfile: boolean;
  /** Groups to judge. */
  readonly groups: readonly string[];
  readonly beliefs: Readonly<Record<string, number>>;
  readonly noseName: string | null;
  /** Time over the plate that a check is likely to take; null where it cannot be told. */
  readonly likelyMs: number | null;
  /** Dishes of the practice kitchen. */
  readonly practiceDishes: readonly { readonly id: string; readonly name: string }[];
  /** null: surprise me. */
  readonly practiceDish: string | null;
  /** ISO 8601 instant of a sniff that was cut short; null if there is none. */
  readonly draftAt: string | null;
  readonly nowMs: number;
}

/** What can be said of a dish before it is eaten; the words are in the catalogue. */
export const CLAIM_IDS = ["vegetarian", "vegan", "noMeat", "noFish", "own"] as const;
export type ClaimId = (typeof CLAIM_IDS)[number];

/** Beliefs that can be picked, as probabilities; `none` leaves the belief out. */
export const BELIEFS = { none: null, unlikely: 0.2, even: 0.5, likely: 0.8 } as const;
export type BeliefId = keyof typeof BELIEFS;

/** The option that lets the virtual cook choose. */
export const SURPRISE = "surprise";

type PlateWords = Words<"common" | "plate" | "sniffer">;

/** Words of Plate before a check. */
export function plateHomeView(state: PlateHomeState, words: PlateWords): PlateHomeView {
  const { plate: text } = words.text;
  return {
    title: text.title,
    sniffer: snifferView(state.sniffer, state, words),
    dish: {
      label: text.dish,
      hint: text.dishHint,
      value: state.dish,
      suggestionsLabel: text.dishSuggestions,
      suggestions: state.suggestions,
    },
    claims: {
      label: text.claims,
      options: CLAIM_IDS.map((id) => ({
        id,
        label: text.claimOptions[id],
        chosen: state.claims.includes(id),
      })),
    },
    cautions: cautionsOf(state, words),
    questions: state.questions.length === 0 ? null : { title: text.questionsTitle, items: state.questions },
    standing: standingOf(state, words),
    kitchenCard: text.kitchenCard,
    practice: practiceOf(state, words),
    belief: beliefOf(state, words),
    draft: draftOf(state, words),
    check: checkOf(state, words),
  };
}

function cautionsOf(state: PlateHomeState, { text }: PlateWords): PlateHomeView["cautions"] {
  const { plate } = text;
  const typed = state.dish.trim() !== "";
  const openYou = state.hasProfile ? null : plate.openYou;
  return {
    title: plate.cautionsTitle,
    items: state.cautions,
    empty: noCautions(state, typed, text),
    openYou,
  };
}

/** Said where no caution stands. Nothing is said of a dish before the tables are here. */
function noCautions({ hasProfile, ready }: PlateHomeState, typed: boolean, text: PlateWords["text"]): string {
  const { common, plate } = text;
  if (!hasProfile) return plate.cautionsNoProfile;
  if (!typed) return plate.cautionsEmpty;
  return ready ? plate.cautionsNone : common.loading;
}

function standingOf({ standing }: PlateHomeState, { text }: PlateWords): PlateHomeView["standing"] {
  if (standing.length === 0) return null;
  return {
    title: text.plate.standingTitle,
    emergency: standing.find(({ id }) => id === "emergency")?.text ?? null,
    lines: standing.filter(({ id }) => id !== "emergency"),
  };
}

function practiceOf(state: PlateHomeState, { text }: PlateWords): PlateHomeView["practice"] {
  const { sniffer } = state;
  if (sniffer.kind !== "ready" || !sniffer.sniffer.virtual) return null;
  const { plate } = text;
  const dishes = state.practiceDishes.map(({ id, name }) => ({
    id,
    label: name,
    chosen: id === state.practiceDish,
  }));
  return {
    title: plate.practiceTitle,
    hint: plate.practiceHint,
    label: plate.practiceDish,
    options: [{ id: SURPRISE, label: plate.surprise, chosen: state.practiceDish === null }, ...dishes],
  };
}

function beliefOf(state: PlateHomeState, words: PlateWords): PlateHomeView["belief"] {
  if (state.groups.length === 0) return null;
  const { plate } = words.text;
  const ids = Object.keys(BELIEFS) as BeliefId[];
  const choices = ids.map((id) => ({ id, label: beliefLabel(id, words) }));
  return {
    title: plate.beliefTitle,
    hint: plate.beliefHint,
    groups: state.groups.map((group) => ({
      group,
      name: groupName(group, words),
      options: choices.map((choice) => ({
        ...choice,
        chosen: (state.beliefs[group] ?? null) === BELIEFS[choice.id],
      })),
    })),
  };
}

/** A belief is a number: it is shown, for the finding reckons with it. */
function beliefLabel(id: BeliefId, { text, formats }: PlateWords): string {
  const label = text.plate.beliefOptions[id];
  const belief = BELIEFS[id];
  return belief === null ? label : `${label} (${percentText(belief, formats)})`;
}

function draftOf(state: PlateHomeState, words: PlateWords): PlateHomeView["draft"] {
  if (state.draftAt === null) return null;
  const { plate } = words.text;
  return {
    title: plate.draftTitle,
    text: plate.draftText(agoText(state.draftAt, state.nowMs, words.formats)),
    use: plate.draftUse,
    drop: plate.draftDrop,
  };
}

function checkOf(state: PlateHomeState, words: PlateWords): PlateHomeView["check"] {
  const { text } = words;
  const { plate } = text;
  const enabled = state.sniffer.kind === "ready" && state.groups.length > 0;
  const judged = state.noseName === null ? plate.checkNoNose : plate.noseLine(state.noseName);
  const likely = state.likelyMs === null ? "" : ` ${plate.likely(durationText(state.likelyMs, words))}`;
  return { label: plate.check, enabled, note: enabled ? judged + likely : missing(state, text) };
}

/** Why a check cannot begin yet. */
function missing({ sniffer, ready }: PlateHomeState, { common, plate }: PlateWords["text"]): string {
  if (sniffer.kind !== "ready") return plate.checkNoSniffer;
  return ready ? plate.noGroups : common.loading;
}
