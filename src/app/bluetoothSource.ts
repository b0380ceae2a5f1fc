import { err, ok, type Result } from "../kernel/result.js";
import { failureOf } from "../flows/openSniffer.js";
import type { SnifferFailure } from "../flows/snifferState.js";
import { ALL_SERVICES, SNIFFER_SERVICE } from "../profile/uuids.js";
import { chooseSniffer, type ChooseError } from "../radio/chooseSniffer.js";
import { connectSniffer } from "../radio/connectSniffer.js";
import { whenNear } from "../radio/whenNear.js";
import type { Dial } from "./snifferConnection.js";
import type { SnifferSource } from "./snifferControl.js";

const WANTED = {
  advertised: SNIFFER_SERVICE,
  alsoUsed: ALL_SERVICES.filter((service) => service !== SNIFFER_SERVICE),
};

/** A sniffer from the browser's own chooser. */
export function bluetoothSource(bluetooth: Bluetooth | undefined): SnifferSource {
  return {
    virtual: false,
    choose: async () => {
      const chosen = await chooseSniffer(bluetooth, WANTED);
      if (!chosen.ok) return notChosen(chosen.error);
      const device = chosen.value;
      return ok({ name: device.name ?? "", deviceId: device.id, dial: dialOf(device) });
    },
  };
}

/** How long a remembered sniffer is listened for before connecting is given up. */
const NEAR_LIMIT_MS = 10_000;

/** A sniffer that the browser remembers: no chooser. */
export function rememberedSource(device: BluetoothDevice): SnifferSource {
  const dial = dialOf(device);
  return {
    virtual: false,
    choose: () =>
      Promise.resolve(
        ok({
          name: device.name ?? "",
          deviceId: device.id,
          dial: async (signal) => {
            const link = await dial(signal);
            if (link.ok || link.error.kind !== "unreachable" || signal?.aborted) return link;
            const limit = AbortSignal.timeout(NEAR_LIMIT_MS);
            const patience = signal === undefined ? limit : AbortSignal.any([signal, limit]);
            return (await whenNear(device, patience)) ? dial(signal) : link;
          },
        }),
      ),
  };
}

function dialOf(device: BluetoothDevice): Dial {
  return async (signal) => {
    const link = await connectSniffer(device, signal);
    return link.ok ? link : err(failureOf(link.error));
  };
}

function notChosen(error: ChooseError): Result<null, SnifferFailure> {
  return error.kind === "noneChosen" ? ok(null) : err(error);
}
