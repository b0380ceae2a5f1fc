import type { KnownSniffer } from "../flows/knownSniffers.js";
import type { SnifferState } from "../flows/snifferState.js";
import type { Words } from "../text/catalogue.js";
import { agoText } from "../text/formats.js";
import { snifferView, type SnifferContext, type SnifferView } from "./snifferView.js";

/** Sniffers met before: connect, or forget. */
export interface KnownSniffersView {
  readonly title: string;
  readonly back: string;
  readonly sniffer: SnifferView;
  readonly listTitle: string;
  readonly empty: string | null;
  readonly items: readonly {
    readonly key: string;
    readonly name: string;
    readonly seen: string;
    /** null where it is connected; without a device id the browser must be asked with its chooser. */
    readonly connect: { readonly label: string; readonly deviceId: string | null } | null;
    readonly forget: string;
    readonly forgetLabel: string;
  }[];
  /** What forgetting leaves. */
  readonly note: string;
}

export interface KnownSniffersState extends SnifferContext {
  readonly sniffer: SnifferState;
  readonly all: readonly KnownSniffer[];
  readonly nowMs: number;
}

/** Words of the page of known sniffers. */
export function knownSniffersView(
  state: KnownSniffersState,
  words: Words<"common" | "sniffer" | "nose">,
): KnownSniffersView {
  const { sniffers: text } = words.text.nose;
  const { sniffer, all } = state;
  const connected = sniffer.kind === "ready" ? sniffer.sniffer.layout.snifferId : null;
  return {
    title: text.title,
    back: words.text.nose.back,
    sniffer: snifferView(sniffer, state, words),
    listTitle: text.listTitle,
    empty: all.length === 0 ? text.empty : null,
    items: all.map((one) => ({
      key: one.deviceId ?? one.snifferId ?? one.name,
      name: one.name,
      seen: seenText(one, connected, state, words),
      connect:
        connected !== null && one.snifferId === connected
          ? null
          : {
              label: one.deviceId === null ? words.text.sniffer.chooseAgain : text.connect,
              deviceId: one.deviceId,
            },
      forget: text.forget,
      forgetLabel: text.forgetLabel(one.name),
    })),
    note: text.note,
  };
}

function seenText(
  { snifferId, deviceId, lastSeenAt }: KnownSniffer,
  connected: string | null,
  { nowMs }: KnownSniffersState,
  words: Words<"nose">,
): string {
  const { sniffers: text } = words.text.nose;
  if (snifferId !== null && snifferId === connected) return text.connected;
  const seen = lastSeenAt === null ? text.never : text.seen(agoText(lastSeenAt, nowMs, words.formats));
  return deviceId === null ? `${seen}. ${text.chooser}` : seen;
}
