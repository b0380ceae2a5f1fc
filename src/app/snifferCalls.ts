/** What each touch on the sniffer's strip does, and what the strip has to know. */
import type { SnifferAction, SnifferContext } from "../views/snifferView.js";
import type { Reconnecting } from "../views/reconnectView.js";
import type { AppModel } from "./appModel.js";
import { bluetoothSource } from "./bluetoothSource.js";
import type { FirstLook } from "./firstLook.js";
import { PRACTICE_SPEED } from "./practice.js";

export function snifferCalls(app: AppModel): (action: SnifferAction, value?: string) => void {
  const { sniffers, kitchen, reach } = app;
  const calls: Readonly<Record<SnifferAction, (value: string) => void>> = {
    pair: () => void sniffers.pair(bluetoothSource(app.ports.bluetooth)),
    useVirtual: () => void sniffers.pair(kitchen.source()),
    known: (deviceId) => void reach.connect(deviceId),
    reconnect: reach.tryNow,
    giveUp: reach.giveUp,
    disconnect: sniffers.disconnect,
  };
  return (action, value = "") => calls[action](value);
}

export function reconnectingOf({ reach }: AppModel): Reconnecting {
  return { state: reach.reconnecting.value, secondsLeft: reach.secondsLeft.value };
}

/** Sniffers that can be connected to without the chooser; null until they are read. */
export function reachable({ reach }: AppModel): SnifferContext["known"] | null {
  const known = reach.known.value;
  return known === null
    ? null
    : known.flatMap(({ deviceId, name }) => (deviceId === null ? [] : [{ deviceId, name }]));
}

/** The sniffer used last, where the browser has forgotten it. */
export function forgottenIn({ reach }: AppModel): string | null {
  const last = reach.known.value?.[0];
  return last?.deviceId === null ? last.name : null;
}

/** `look` stands in until the known sniffers are read and the browser has told of its radio. */
export function snifferContext(
  app: AppModel,
  look: Pick<FirstLook, "known" | "forgotten" | "radioOff"> = {
    known: [],
    forgotten: null,
    radioOff: false,
  },
): SnifferContext {
  return {
    bluetooth: app.ports.bluetooth !== undefined,
    radioOff: app.reach.radioOff.value ?? look.radioOff,
    known: reachable(app) ?? look.known,
    forgotten: app.reach.known.value === null ? look.forgotten : forgottenIn(app),
    reconnecting: reconnectingOf(app),
    practiceSpeed: PRACTICE_SPEED,
  };
}
