import type { ConnectedSniffer, SnifferFailure, SnifferState } from "../flows/snifferState.js";
import { LOW_BATTERY_PCT } from "../flows/lowBattery.js";
import { tellsFault } from "../flows/tellsFault.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText, unitText } from "../text/formats.js";
import { durationText } from "./durationText.js";
import { reconnectView, type Reconnecting } from "./reconnectView.js";

export type SnifferAction = "pair" | "useVirtual" | "known" | "reconnect" | "giveUp" | "disconnect";

/** Something that can be tapped; `value` tells one known sniffer from another. */
export interface SnifferActionView {
  readonly id: SnifferAction;
  readonly label: string;
  readonly main: boolean;
  readonly value?: string;
}

/** The strip that says which sniffer there is and how it does. */
export interface SnifferView {
  readonly kind: SnifferState["kind"];
  readonly label: string;
  readonly title: string;
  readonly text: string | null;
  /** The text tells what is wrong, and stands out. */
  readonly urgent: boolean;
  /** The countdown to the next try, or until it is warm; it changes each second and is not read out. */
  readonly countdown: string | null;
  readonly warning: string | null;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly practice: string | null;
  readonly busy: boolean;
  readonly actions: readonly SnifferActionView[];
  /** What does not work in this browser, and what does; null where pairing is possible. */
  readonly unsupported: { readonly title: string; readonly text: string; readonly works: string } | null;
}

export interface SnifferContext {
  readonly bluetooth: boolean;
  /** The browser says that its radio is off, missing or forbidden. */
  readonly radioOff: boolean;
  /** Sniffers that can be connected to without the chooser, last used first. */
  readonly known: readonly { readonly deviceId: string; readonly name: string }[];
  /** Name of the sniffer used last, where the browser has forgotten it; else null. */
  readonly forgotten: string | null;
  readonly reconnecting: Reconnecting;
  /** How many times faster than real the virtual sniffer's time runs. */
  readonly practiceSpeed: number;
}

type SnifferWords = Words<"common" | "sniffer">;

/** The sniffer's state in words, with what can be done about it. */
export function snifferView(state: SnifferState, context: SnifferContext, words: SnifferWords): SnifferView {
  const { sniffer: text } = words.text;
  const base = {
    kind: state.kind,
    label: text.title,
    urgent: false,
    countdown: null,
    warning: context.bluetooth && context.radioOff && needsRadio(state) ? text.radioOff : null,
    facts: [],
    practice: null,
    busy: false,
    unsupported: unsupportedView(context, words),
  };
  const fresh = starting(context, words);
  // Between the tap and the answer nothing can be done about the radio or the browser: only what is awaited is said.
  const underWay = { ...base, warning: null, unsupported: null, busy: true, actions: [] };
  switch (state.kind) {
    case "none": {
      const { forgotten, known } = context;
      const title = known.length === 0 && forgotten === null ? text.none : text.notConnected;
      const advice =
        forgotten !== null
          ? failureText({ kind: "forgotten", name: forgotten }, words)
          : known.length === 0
            ? text.noneText
            : text.notConnectedText;
      // What is wrong with the radio stands in place of the advice: nothing moves when the browser tells of it.
      const { warning } = base;
      return {
        ...base,
        title,
        // Where nothing can be paired, the words about that stand alone.
        text: warning ?? (context.bluetooth ? advice : null),
        urgent: warning !== null,
        warning: null,
        actions: fresh,
      };
    }
    case "choosing":
      return { ...underWay, title: text.choosing, text: text.choosingText };
    case "connecting": {
      const name = state.virtual ? text.virtualName : state.name;
      const practice = state.virtual ? practiceText(context, words) : null;
      return { ...underWay, title: text.connecting(name), text: text.connectingText, practice };
    }
    case "ready":
      return { ...base, ...readyView(state.sniffer, context, words), unsupported: null };
    case "lost":
      return { ...base, ...lostView(state, context, words) };
    case "failed":
      return {
        ...base,
        title: text.failed,
        text: failureText(state.failure, words),
        actions:
          state.failure.kind === "forgotten"
            ? starting({ ...context, forgotten: state.failure.name }, words)
            : fresh,
      };
  }
}

/** The virtual sniffer is reached again without a radio. */
const needsRadio = (state: SnifferState) => state.kind !== "lost" || !state.sniffer.virtual;

/** A sniffer's name as people know it. */
export function snifferName(
  sniffer: Pick<ConnectedSniffer, "name" | "virtual">,
  words: SnifferWords,
): string {
  return sniffer.virtual ? words.text.sniffer.virtualName : sniffer.name;
}

function readyView(sniffer: ConnectedSniffer, context: SnifferContext, words: SnifferWords) {
  const { sniffer: text } = words.text;
  const { status, batteryPct } = sniffer;
  const low = batteryPct !== null && batteryPct < LOW_BATTERY_PCT ? text.batteryLow : null;
  return {
    title: snifferName(sniffer, words),
    ...stateTexts(sniffer, words),
    warning: status !== null && tellsFault(status) ? text.heaterFault : low,
    facts: factsOf(sniffer, words),
    practice: sniffer.virtual ? practiceText(context, words) : null,
    actions: [{ id: "disconnect", label: text.disconnect, main: false }] as const,
  };
}

const practiceText = ({ practiceSpeed }: SnifferContext, { text, formats }: SnifferWords) =>
  text.sniffer.practice(numberText(practiceSpeed, formats));

function stateTexts({ status }: ConnectedSniffer, words: SnifferWords) {
  const { states, warmUpLeft } = words.text.sniffer;
  if (status === null) return { text: states.unknown };
  const { state, warmUpLeftMs } = status;
  // While it warms up, the time left says it all.
  const text = state === "warming" && warmUpLeftMs > 0 ? null : states[state];
  return { text, countdown: warmUpLeftMs > 0 ? warmUpLeft(durationText(warmUpLeftMs, words)) : null };
}

function factsOf({ batteryPct, air }: ConnectedSniffer, words: SnifferWords): SnifferView["facts"] {
  const { sniffer: text } = words.text;
  const battery = batteryPct === null ? text.batteryUnknown : percentText(batteryPct / 100, words.formats);
  const { temperatureC, humidityPct } = air;
  const known =
    temperatureC === undefined || humidityPct === undefined
      ? text.batteryUnknown
      : text.airText(
          unitText(temperatureC, "celsius", words.formats),
          percentText(humidityPct / 100, words.formats),
        );
  // Both have their place from the start, so that nothing moves when the first value comes.
  return [
    { label: text.battery, value: battery },
    { label: text.air, value: known },
  ];
}

function lostView(
  state: Extract<SnifferState, { kind: "lost" }>,
  context: SnifferContext,
  words: SnifferWords,
) {
  const { sniffer: text } = words.text;
  const again = reconnectView(context.reconnecting, words);
  // The lost one is what "connect again" is for: it is not offered twice.
  const known = context.known.filter(({ name }) => name !== state.sniffer.name);
  const tryNow = { id: "reconnect", label: again.tryNow, main: true } as const;
  const others: Actions =
    again.giveUp === null
      ? quieter(starting({ ...context, known }, words))
      : [{ id: "giveUp", label: again.giveUp, main: false }];
  return {
    title: text.lost(snifferName(state.sniffer, words)),
    text: state.failure === null ? text.lostText : failureText(state.failure, words),
    countdown: again.text,
    actions: [tryNow, ...others],
  };
}

function failureText(failure: SnifferFailure, words: SnifferWords): string {
  const { failures } = words.text.sniffer;
  const join = (sentence: string, remedy: string) => `${sentence} ${remedy}`;
  if (failure.kind === "forgotten") {
    return join(
      failures.forgotten.sentence(failure.name || words.text.sniffer.title),
      failures.forgotten.remedy,
    );
  }
  if (failure.kind === "unexpected") {
    return join(failures.unexpected.sentence(failure.detail), failures.unexpected.remedy);
  }
  if (failure.kind === "badLayout" && failure.error.kind === "profileVersion") {
    const { found, known } = failure.error;
    const { sentence, remedy } = failures.newerProfile;
    return join(sentence(`${found.major}.${found.minor}`, `${known.major}.${known.minor}`), remedy);
  }
  return join(failures[failure.kind].sentence, failures[failure.kind].remedy);
}

type Actions = readonly SnifferActionView[];

/** Known sniffers on the strip; the rest stand on their own page. */
const KNOWN_SHOWN = 2;

function starting({ bluetooth, known, forgotten }: SnifferContext, words: SnifferWords): Actions {
  const { sniffer: text } = words.text;
  const practice = { id: "useVirtual", label: text.useVirtual, main: !bluetooth } as const;
  if (!bluetooth) return [practice];
  const isForgotten = forgotten !== null;
  const shown = known.slice(0, KNOWN_SHOWN).map(({ deviceId, name }, i) => ({
    id: "known" as const,
    label: text.connectTo(name),
    main: i === 0 && !isForgotten,
    value: deviceId,
  }));
  const isFirst = shown.length === 0;
  const label = isForgotten ? text.chooseAgain : isFirst ? text.pair : text.pairAnother;
  const pair = { id: "pair", label, main: isFirst || isForgotten } as const;
  return isForgotten ? [pair, ...shown, practice] : [...shown, pair, practice];
}

const quieter = (actions: Actions): Actions => actions.map((action) => ({ ...action, main: false }));

function unsupportedView({ bluetooth }: SnifferContext, words: SnifferWords): SnifferView["unsupported"] {
  const { sniffer: text } = words.text;
  if (bluetooth) return null;
  return { title: text.unsupportedTitle, text: text.unsupportedText, works: text.unsupportedWorks };
}
