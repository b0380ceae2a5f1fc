/** What each touch on the sniffer's strip does, and what the strip has to know. */
import type { SnifferAction, SnifferContext } from "../views/snifferView.js";
import type { Reconnecting } from "../views/reconnectView.js";
import type { AppModel } from "./appModel.js";
import { bluetoothSource } from "./bluetoothSource.js";
import { PRACTICE_SPEED } from "./practice.js";

export function snifferCalls(app: AppModel): (action: SnifferAction, value?: string) => void {
  const { sniffers, kitchen, reconnect, remembered } = app;
  const calls: Readonly<Record<SnifferAction, (value: string) => void>> = {
    pair: () => void sniffers.pair(bluetoothSource(app.ports.bluetooth)),
    useVirtual: () => void sniffers.pair(kitchen.source()),
    known: (deviceId) => void remembered.connect(deviceId),
    reconnect: reconnect.tryNow,
    giveUp: reconnect.giveUp,
    disconnect: sniffers.disconnect,
  };
  return (action, value = "") => calls[action](value);
}

export function reconnectingOf({ reconnect }: AppModel): Reconnecting {
  return { state: reconnect.state.value, secondsLeft: reconnect.secondsLeft.value };
}

export function snifferContext(app: AppModel): SnifferContext {
  return {
    bluetooth: app.ports.bluetooth !== undefined,
    radioOff: app.availability.value === "unavailable",
    known: app.remembered.known.value.flatMap(({ deviceId, name }) =>
      deviceId === null ? [] : [{ deviceId, name }],
    ),
    reconnecting: reconnectingOf(app),
    practiceSpeed: PRACTICE_SPEED,
  };
}
