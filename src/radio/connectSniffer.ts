/** A chosen device to a `Link`: one connection, from `connect` until it is lost or closed. */
import type { CharacteristicAddress, Link, LinkError } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import { callGatt } from "./callGatt.js";
import { makeGattTable } from "./gattTable.js";
import { makeInTurn } from "./inTurn.js";
import { octetsOf } from "./notificationTap.js";
import { watchConnection } from "./watchConnection.js";

/**
 * Connects. Never throws. A lost link stays lost: connecting again gives a new one, which discovers anew, since the
 * browser makes the old services and characteristics invalid.
 *
 * @param signal - gives up connecting when aborted; the answer is then `lost`
 */
export async function connectSniffer(
  device: BluetoothDevice,
  signal?: AbortSignal,
): Promise<Result<Link, LinkError>> {
  const server = device.gatt;
  if (server === undefined) return err({ kind: "refused", detail: "the device has no GATT server" });
  if (signal?.aborted) return err({ kind: "lost" });
  const settled = new AbortController();
  const connected = await Promise.race([connect(server, signal), givenUp(server, signal, settled.signal)]);
  settled.abort();
  if (!connected.ok) return connected;
  return server.connected ? ok(makeLink(device, server)) : err({ kind: "lost" });
}

/** Some browsers leave a connection attempt open for ever, even after `disconnect`: nobody waits for it then. */
function givenUp(
  server: BluetoothRemoteGATTServer,
  signal: AbortSignal | undefined,
  settled: AbortSignal,
): Promise<Result<void, LinkError>> {
  return new Promise((resolve) =>
    signal?.addEventListener(
      "abort",
      () => {
        server.disconnect();
        resolve(err({ kind: "lost" }));
      },
      { once: true, signal: settled },
    ),
  );
}

/** The newest attempt on each device: an older one that comes through late may not cut it off. */
const newest = new WeakMap<BluetoothRemoteGATTServer, symbol>();

/** A first attempt may fail while the radio is still busy with the last one: one more is common practice. */
async function connect(
  server: BluetoothRemoteGATTServer,
  signal: AbortSignal | undefined,
): Promise<Result<void, LinkError>> {
  const mine = Symbol();
  newest.set(server, mine);
  for (let triesLeft = 1; ; triesLeft -= 1) {
    try {
      await server.connect();
      if (signal?.aborted && newest.get(server) === mine) server.disconnect();
      return ok(undefined);
    } catch (cause) {
      const name = cause instanceof DOMException ? cause.name : "";
      if (signal?.aborted || name === "AbortError") return err({ kind: "lost" });
      if (name !== "NetworkError") return err({ kind: "unexpected", detail: String(cause) });
      if (triesLeft === 0) return err({ kind: "lost" });
    }
  }
}

function makeLink(device: BluetoothDevice, server: BluetoothRemoteGATTServer): Link {
  const inTurn = makeInTurn();
  const table = makeGattTable(server);
  const connection = watchConnection(device, server, table.close);

  function call<T>(address: CharacteristicAddress, use: () => Promise<T>): Promise<Result<T, LinkError>> {
    return inTurn(() => callGatt({ address, isConnected: connection.isUp, renew: table.renew }, use));
  }

  return {
    name: device.name ?? "",
    read: (address) =>
      call(address, async () => {
        const { characteristic, tap } = await table.find(address);
        return tap.whileReading(async () => octetsOf(await characteristic.readValue()));
      }),
    write: (address, bytes) =>
      call(address, async () => {
        const { characteristic } = await table.find(address);
        await characteristic.writeValueWithResponse(Uint8Array.from(bytes));
      }),
    subscribe: (address, onBytes) => call(address, () => table.listen(address, onBytes)),
    onLost: connection.onLost,
    close: connection.close,
  };
}
