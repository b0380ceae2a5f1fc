import type { Words } from "../text/catalogue.js";

export type PlaceId = "plate" | "meals" | "nose" | "you";
const PLACES: readonly PlaceId[] = ["plate", "meals", "nose", "you"];

/** The frame around each screen. */
export interface ShellView {
  readonly appName: string;
  readonly skip: string;
  /** null while a check runs: nothing may be tapped by mistake. */
  readonly places: {
    readonly label: string;
    readonly items: readonly {
      readonly id: PlaceId;
      readonly label: string;
      readonly href: string;
      readonly here: boolean;
    }[];
  } | null;
  readonly update: {
    readonly title: string;
    readonly text: string;
    readonly now: string;
    readonly later: string;
  } | null;
  /** What the network keeps from the person, or does not. */
  readonly network: string | null;
  readonly toast: { readonly text: string; readonly undo: string | null } | null;
}

export interface ShellState {
  readonly place: PlaceId;
  readonly hrefOf: (place: PlaceId) => string;
  readonly checkRunning: boolean;
  /** A newer app waits, and nothing would be lost by loading it now. */
  readonly updateWaiting: boolean;
  readonly online: boolean;
  /** All of the app is on the phone. */
  readonly kept: boolean;
  /** A part of the app was wanted and has not come. */
  readonly pieceMissing: boolean;
  readonly toast: { readonly text: string; readonly undoable: boolean } | null;
}

function networkNotice(
  { online, kept, pieceMissing }: ShellState,
  { offline, pieceMissing: comes }: Words<"common">["text"]["common"],
): string | null {
  if (pieceMissing || (!online && !kept)) return comes;
  return online ? null : offline;
}

/** Words of the frame. */
export function shellView(state: ShellState, { text }: Words<"common">): ShellView {
  const { common } = text;
  return {
    appName: common.appName,
    skip: common.skip,
    places: state.checkRunning
      ? null
      : {
          label: common.placesLabel,
          items: PLACES.map((id) => ({
            id,
            label: common.places[id],
            href: state.hrefOf(id),
            here: id === state.place,
          })),
        },
    update: state.updateWaiting
      ? {
          title: common.updateTitle,
          text: common.updateText,
          now: common.updateNow,
          later: common.updateLater,
        }
      : null,
    network: networkNotice(state, common),
    toast:
      state.toast === null
        ? null
        : { text: state.toast.text, undo: state.toast.undoable ? common.undo : null },
  };
}
