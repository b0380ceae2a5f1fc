import { err, ok, type Result } from "../kernel/result.js";
import type { SnifferFailure } from "../flows/snifferState.js";
import { ALL_SERVICES, SNIFFER_SERVICE } from "../profile/uuids.js";
import { chooseSniffer, type ChooseError } from "../radio/chooseSniffer.js";
import type { SnifferSource } from "./snifferControl.js";
import { untilHere } from "./pieces.js";

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
      const { dialDevice } = await untilHere(() => import("./dialDevice.js"));
      return ok({ name: device.name ?? "", deviceId: device.id, dial: dialDevice(device) });
    },
  };
}

function notChosen(error: ChooseError): Result<null, SnifferFailure> {
  return error.kind === "noneChosen" ? ok(null) : err(error);
}
