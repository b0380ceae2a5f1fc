import type { BackupError } from "../meals/backup.js";
import {
  ACTIVE_NOSE_ID,
  type ImportChoice,
  type ImportDifference,
  type ImportPlan,
} from "../meals/backupContents.js";
import type { Words } from "../text/catalogue.js";
import { agoText, dayAndTimeText, numberText, sizeText } from "../text/formats.js";
import type { OptionView } from "./plateHomeView.js";

/** Where the data are, and how they go out, come in and vanish. */
export interface DataView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly persistence: { readonly text: string; readonly ask: string | null };
  readonly setAside: string | null;
  readonly out: {
    readonly title: string;
    readonly text: string;
    readonly fault: string | null;
    readonly last: string;
    readonly save: string;
    readonly saving: boolean;
    readonly saveNoPhotos: string;
  };
  readonly in: {
    readonly title: string;
    readonly text: string;
    readonly fault: string | null;
    readonly choose: string;
  };
  readonly demo: { readonly title: string; readonly text: string; readonly drop: string } | null;
  readonly erase: {
    readonly title: string;
    readonly text: string;
    readonly open: string;
    readonly sheet: {
      readonly title: string;
      readonly text: string;
      readonly sure: string;
      readonly sureOn: boolean;
      readonly now: string;
      readonly cancel: string;
    } | null;
  };
}

export type BackupFault = BackupError | { readonly kind: keyof DataWords["text"]["trouble"]["kinds"] };

export interface DataState {
  readonly meals: number;
  readonly photos: number;
  readonly sniffs: number;
  readonly noses: number;
  /** null where the browser does not tell. */
  readonly sizeBytes: number | null;
  readonly persisted: boolean;
  /** ISO 8601 instant; null before the first backup. */
  readonly lastBackupAt: string | null;
  readonly setAside: number;
  readonly hasDemo: boolean;
  /** Stands beside the button that it came from. */
  readonly fault: { readonly way: "out" | "in"; readonly cause: BackupFault } | null;
  /** A backup is being put together. */
  readonly saving: boolean;
  /** null while the sheet is closed. */
  readonly erase: { readonly sure: boolean } | null;
  readonly nowMs: number;
}

type DataWords = Words<"common" | "data" | "trouble">;

/** Words of the data page. */
export function dataView(state: DataState, words: DataWords): DataView {
  const { data: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  return {
    title: text.title,
    back: text.back,
    text: text.text,
    facts: [
      ...(["meals", "photos", "sniffs", "noses"] as const).map((key) => ({
        label: text.counts[key],
        value: whole(state[key]),
      })),
      ...(state.sizeBytes === null
        ? []
        : [{ label: text.counts.size, value: sizeText(state.sizeBytes, words.formats) }]),
    ],
    persistence: state.persisted
      ? { text: text.persisted, ask: null }
      : { text: text.notPersisted, ask: text.askPersist },
    setAside: state.setAside === 0 ? null : text.setAside(whole(state.setAside)),
    out: {
      title: text.outTitle,
      text: text.outText,
      fault: faultText("out", state, words),
      last:
        state.lastBackupAt === null
          ? text.noBackup
          : text.lastBackup(agoText(state.lastBackupAt, state.nowMs, words.formats)),
      save: state.saving ? text.saving : text.out,
      saving: state.saving,
      saveNoPhotos: text.outNoPhotos,
    },
    in: { title: text.inTitle, text: text.inText, fault: faultText("in", state, words), choose: text.in },
    demo: state.hasDemo ? { title: text.demoTitle, text: text.demoText, drop: text.dropDemo } : null,
    erase: eraseOf(state, words),
  };
}

function eraseOf({ erase }: DataState, { text: { data, common } }: DataWords): DataView["erase"] {
  return {
    title: data.eraseTitle,
    text: data.eraseText,
    open: data.erase,
    sheet:
      erase === null
        ? null
        : {
            title: data.eraseSheet,
            text: data.eraseText,
            sure: data.eraseSure,
            sureOn: erase.sure,
            now: data.eraseNow,
            cancel: common.cancel,
          },
  };
}

function faultText(way: "out" | "in", { fault }: DataState, words: DataWords): string | null {
  return fault?.way === way ? causeText(fault.cause, words) : null;
}

function causeText(fault: BackupFault, words: DataWords): string {
  const { faults } = words.text.data;
  switch (fault.kind) {
    case "newerFormat":
      return faults.newerFormat(fault.format);
    case "badRecord":
      return faults.badRecord(numberText(fault.line, words.formats), fault.cause);
    case "tooLarge":
    case "notABackup":
    case "damaged":
      return faults[fault.kind];
    default:
      return words.text.trouble.kinds[fault.kind];
  }
}

/** What a backup would do, before anything is done. */
export interface ImportPlanView {
  readonly title: string;
  readonly text: string;
  readonly counts: readonly string[];
  readonly allSame: string | null;
  readonly differTitle: string;
  readonly differing: readonly {
    readonly key: string;
    readonly table: ImportDifference["mine"]["table"];
    readonly id: string;
    readonly name: string;
    /** Of the record here, and of the one in the file. */
    readonly dates: readonly string[];
    readonly options: readonly OptionView[];
  }[];
  readonly more: string | null;
  readonly do: string;
  readonly doing: boolean;
  readonly cancel: string;
}

/** Differences that can be decided one by one; the rest go as proposed. */
const DIFFERENCES_AT_ONCE = 40;

/** Words of the plan. */
export function importPlanView(
  plan: ImportPlan,
  writtenAt: string,
  doing: boolean,
  words: DataWords,
): ImportPlanView {
  const { plan: text } = words.text.data;
  const whole = (value: number) => numberText(value, words.formats);
  const { fresh, same, differing } = plan;
  const rest = differing.length - DIFFERENCES_AT_ONCE;
  return {
    title: text.title,
    text: text.text(dayAndTimeText(writtenAt, words.formats)),
    counts: [
      text.fresh(whole(fresh.length)),
      text.same(whole(same.length)),
      text.differing(whole(differing.length)),
    ],
    allSame: fresh.length + differing.length === 0 ? text.allSame : null,
    differTitle: text.differTitle,
    differing: differing.slice(0, DIFFERENCES_AT_ONCE).map((difference) => differenceView(difference, words)),
    more: rest > 0 ? text.more(whole(rest)) : null,
    do: doing ? text.doing : text.do,
    doing,
    cancel: words.text.common.cancel,
  };
}

function differenceView(difference: ImportDifference, words: DataWords) {
  const { plan: text } = words.text.data;
  const { mine, theirs, choice, choices } = difference;
  const date = (at: string | null) => (at === null ? text.noDate : dayAndTimeText(at, words.formats));
  const isActiveNose = mine.table === "settings" && mine.id === ACTIVE_NOSE_ID;
  const { dish, name } = theirs.value;
  const called = typeof dish === "string" && dish !== "" ? dish : typeof name === "string" ? name : "";
  return {
    key: `${mine.table}:${mine.id}`,
    table: mine.table,
    id: mine.id,
    name: [isActiveNose ? text.activeNose : text.tables[mine.table], called]
      .filter((part) => part !== "")
      .join(": "),
    dates: [text.mine(date(mine.changedAt)), text.theirs(date(theirs.changedAt))],
    options: choices.map((id: ImportChoice) => ({
      id,
      label: text.choices[id],
      chosen: id === choice,
    })),
  };
}
