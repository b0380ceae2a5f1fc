import { signal } from "@preact/signals";
import { describe, expect, it } from "vitest";
import { createKnownSniffers } from "../../src/app/knownSniffersControl.js";
import type { ChosenSniffer, SnifferSource } from "../../src/app/snifferControl.js";
import type { SnifferFailure, SnifferState } from "../../src/flows/snifferState.js";
import { memoryPorts } from "./mealsPorts.js";

/** A browser that remembers these devices, and names them only when told to. */
function slowBrowser(...ids: string[]) {
  let name = (): void => undefined;
  const named = new Promise<void>((resolve) => (name = resolve));
  const devices = ids.map((id) => ({ id, name: "bench" }) as unknown as BluetoothDevice);
  const bluetooth = { getDevices: () => named.then(() => devices) } as unknown as Bluetooth;
  return { bluetooth, name };
}

function bench(bluetooth: Bluetooth) {
  const chosen: (ChosenSniffer | null)[] = [];
  const failed: SnifferFailure[] = [];
  const sniffers = {
    state: signal<SnifferState>({ kind: "none" }),
    deviceId: signal<string | null>(null),
    pair: async (source: SnifferSource) => {
      const choice = await source.choose();
      if (choice.ok) chosen.push(choice.value);
      else failed.push(choice.error);
    },
    disconnect: () => undefined,
  };
  return { known: createKnownSniffers({ ...memoryPorts(), bluetooth }, sniffers), chosen, failed };
}

describe("connecting to a sniffer met before", () => {
  it("waits for the browser to name its devices where the tap came first", async () => {
    const { bluetooth, name } = slowBrowser("d1");
    const { known, chosen } = bench(bluetooth);
    const connected = known.connect("d1");
    name();
    await connected;
    expect(chosen.map((sniffer) => sniffer?.deviceId)).toEqual(["d1"]);
  });

  it("chooses none where the browser has forgotten it, and the failure says so", async () => {
    const { bluetooth, name } = slowBrowser("another");
    const { known, chosen, failed } = bench(bluetooth);
    name();
    await known.connect("d1");
    expect(chosen).toEqual([]);
    expect(failed).toEqual([{ kind: "forgotten", name: "" }]);
    expect(known.known.value?.map(({ deviceId }) => deviceId)).toEqual(["another"]);
  });
});
