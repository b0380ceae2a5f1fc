/** Knows whether one connection still stands, and says once when it ended without our doing. */

export interface Connection {
  isUp(): boolean;
  onLost(listener: () => void): void;
  close(): void;
}

/** @param onEnd - called once when the connection ends, by loss or by `close`, before any `onLost` listener */
export function watchConnection(
  device: BluetoothDevice,
  server: BluetoothRemoteGATTServer,
  onEnd: () => void,
): Connection {
  const listeners: (() => void)[] = [];
  let state: "up" | "lost" | "closed" = "up";
  const end = (how: "lost" | "closed"): void => {
    state = how;
    device.removeEventListener("gattserverdisconnected", onDisconnected);
    onEnd();
  };
  const onDisconnected = (): void => {
    end("lost");
    for (const listener of listeners) listener();
  };
  device.addEventListener("gattserverdisconnected", onDisconnected);
  return {
    isUp: () => state === "up" && server.connected,
    onLost(listener) {
      if (state === "lost") listener();
      else listeners.push(listener);
    },
    close() {
      if (state !== "up") return;
      end("closed");
      server.disconnect();
    },
  };
}
