import type { MovedFrom } from "../nose/nose.js";
import type { NoseFileError } from "../nose/noseFile.js";
import type { Words } from "../text/catalogue.js";
import { dayAndTimeText, numberText } from "../text/formats.js";
import { movedText } from "./movedText.js";

/** A kept nose, as a list tells it. */
export interface NoseVersion {
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  readonly demo: boolean;
  readonly moved?: MovedFrom | undefined;
}

export interface NoseDecisionNote {
  readonly noseId: string;
  readonly decision: "taught" | "accepted" | "rejected" | "rolledBack";
  /** ISO 8601 instant. */
  readonly at: string;
}

/** All noses, and files in and out. */
export interface VersionsView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly noses: readonly {
    readonly id: string;
    readonly name: string;
    readonly taught: string;
    readonly moved: string | null;
    readonly demo: string | null;
    readonly active: string | null;
    readonly compare: string;
    readonly compareLabel: string;
    readonly export: string;
    readonly exportLabel: string;
  }[];
  readonly import: { readonly label: string; readonly text: string };
  readonly samples: { readonly import: string; readonly export: string };
  readonly fault: string | null;
  /** What bringing in a sniff file came to, line by line where it was refused. */
  readonly brought: { readonly text: string; readonly faults: readonly string[] } | null;
  readonly history: { readonly title: string; readonly lines: readonly string[] };
}

type VersionWords = Words<"common" | "nose" | "transfer" | "trouble">;

/** Why a file did not come in: the file itself, its size, or what the storage said. */
export type NoseImportFault =
  | NoseFileError
  | { readonly kind: "tooLarge" | "unreadable" | "alreadyKept" | "busy" }
  | { readonly kind: "storage" }
  | { readonly kind: keyof VersionWords["text"]["trouble"]["kinds"] };

export interface VersionsState {
  /** Newest first. */
  readonly noses: readonly NoseVersion[];
  readonly activeId: string | null;
  /** Newest first. */
  readonly decisions: readonly NoseDecisionNote[];
  readonly fault: NoseImportFault | null;
  readonly brought: {
    readonly samples: number;
    readonly faults: readonly { readonly line: number; readonly field: string; readonly cause: string }[];
  } | null;
}

/** Refused lines that are shown at once. */
const FAULTS_AT_ONCE = 5;

/** Words of the versions page. */
export function versionsView(state: VersionsState, words: VersionWords): VersionsView {
  const { versions: text, back, taught } = words.text.nose;
  const nameOf = (id: string) => state.noses.find((nose) => nose.id === id)?.name ?? id;
  return {
    title: text.title,
    back,
    text: text.text,
    noses: state.noses.map((nose) => ({
      id: nose.id,
      name: nose.name,
      taught: taught(dayAndTimeText(nose.taughtAt, words.formats)),
      moved: movedText(nose.moved, words),
      demo: nose.demo ? words.text.common.demoMark : null,
      active: nose.id === state.activeId ? text.active : null,
      compare: text.compare,
      compareLabel: text.compareLabel(nose.name),
      export: text.export,
      exportLabel: text.exportLabel(nose.name),
    })),
    import: { label: text.import, text: text.importText },
    samples: { import: text.importSamples, export: text.exportSamples },
    fault: state.fault === null ? null : faultText(state.fault, words),
    brought: broughtOf(state.brought, words),
    history: {
      title: text.history,
      lines: state.decisions.map(
        ({ noseId, decision, at }) =>
          `${dayAndTimeText(at, words.formats)} · ${text.decisions[decision](nameOf(noseId))}`,
      ),
    },
  };
}

function faultText(fault: NoseImportFault, words: VersionWords): string {
  const { faults } = words.text.nose.versions;
  const { kinds } = words.text.trouble;
  switch (fault.kind) {
    case "otherFormat":
      return faults.otherFormat(fault.format);
    case "badField":
      return faults.badField(fault.field);
    case "notJson":
    case "otherChannels":
    case "tooLarge":
    case "unreadable":
    case "alreadyKept":
    case "busy":
      return faults[fault.kind];
    case "storage":
      return kinds.unexpected;
    default:
      return kinds[fault.kind];
  }
}

function broughtOf(brought: VersionsState["brought"], words: VersionWords): VersionsView["brought"] {
  if (brought === null) return null;
  const { versions: text } = words.text.nose;
  const { faults, samples } = brought;
  const whole = (value: number) => numberText(value, words.formats);
  const refused = faults.length === 0 ? [] : [text.linesRefused(whole(faults.length))];
  return {
    text: [text.samplesIn(whole(samples)), ...refused].join(" "),
    faults: faults
      .slice(0, FAULTS_AT_ONCE)
      .map(({ line, field, cause }) => text.lineFault(whole(line), field, cause)),
  };
}
