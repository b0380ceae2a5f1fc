/** Known sniffers: what the phone keeps of them, and which the browser connects to without its chooser. */
import { computed, effect, signal, untracked, type ReadonlySignal } from "@preact/signals";
import { knownSniffers, type KnownSniffer } from "../flows/knownSniffers.js";
import type { ConnectedSniffer } from "../flows/snifferState.js";
import { err, ok } from "../kernel/result.js";
import { forgetDevice, rememberedSniffers } from "../radio/rememberedSniffers.js";
import type { SnifferRecord } from "../store/storeTypes.js";
import { dialRemembered } from "./dialDevice.js";
import { noteDevice, snifferIdsByDevice } from "./knownDevices.js";
import { nowIso, type Ports } from "./ports.js";
import type { SnifferControl } from "./snifferControl.js";

export interface KnownSniffersControl {
  /** Last used first; null until they are read. */
  readonly known: ReadonlySignal<readonly KnownSniffer[] | null>;
  load(): Promise<void>;
  /** Connects without the chooser; where the browser no longer remembers the device, the failure says so. */
  connect(deviceId: string): Promise<void>;
  /** Forgets it in the browser and on the phone; sniffs taken with it stay. */
  forget(sniffer: KnownSniffer): Promise<void>;
}

export function createKnownSniffers(
  ports: Pick<Ports, "store" | "bluetooth" | "nowMs">,
  sniffers: Pick<SnifferControl, "state" | "deviceId" | "pair" | "disconnect">,
): KnownSniffersControl {
  const devices = signal<readonly BluetoothDevice[]>([]);
  const notes = signal<readonly SnifferRecord[]>([]);
  const ids = signal(snifferIdsByDevice());
  const isRead = signal(false);

  async function load(): Promise<void> {
    devices.value = await rememberedSniffers(ports.bluetooth);
    const kept = await ports.store.listSniffers();
    if (kept.ok) notes.value = kept.value.items;
    ids.value = snifferIdsByDevice();
    isRead.value = true;
  }

  const noteOf = (deviceId: string) => notes.value.find(({ id }) => id === ids.value[deviceId]);

  async function note(sniffer: ConnectedSniffer, deviceId: string | null): Promise<void> {
    if (deviceId !== null) noteDevice(deviceId, sniffer.layout.snifferId);
    const { snifferId: id, channels } = sniffer.layout;
    const now = nowIso(ports);
    const kept = await ports.store.listSniffers();
    const before = kept.ok ? kept.value.items.find((known) => known.id === id) : undefined;
    const record: SnifferRecord = {
      note: "",
      firstSeenAt: now,
      ...before,
      id,
      name: sniffer.name,
      channels,
      lastSeenAt: now,
    };
    await ports.store.save({ sniffers: [record] });
    await load();
  }

  const openedId = computed(() => {
    const { value } = sniffers.state;
    return value.kind === "ready" && !value.sniffer.virtual ? value.sniffer.layout.snifferId : null;
  });
  effect(() => {
    if (openedId.value === null) return;
    untracked(() => {
      const { value } = sniffers.state;
      if (value.kind === "ready") void note(value.sniffer, sniffers.deviceId.value);
    });
  });
  return {
    known: computed(() => {
      if (!isRead.value) return null;
      const remembered = devices.value.map(({ id, name }) => ({ id, name: name ?? "" }));
      return knownSniffers(notes.value, remembered, ids.value);
    }),
    load,
    connect: async (deviceId) => {
      const named = () => devices.value.find(({ id }) => id === deviceId);
      const choose = async () => {
        // Its button stands from the last visit before the browser has named its devices.
        if (named() === undefined) await load();
        const device = named();
        if (device === undefined)
          return err({ kind: "forgotten" as const, name: noteOf(deviceId)?.name ?? "" });
        return ok({ name: device.name ?? "", deviceId, dial: dialRemembered(device) });
      };
      await sniffers.pair({ virtual: false, choose });
    },
    forget: async ({ deviceId, snifferId }) => {
      if (deviceId !== null) {
        if (deviceId === sniffers.deviceId.value) sniffers.disconnect();
        const device = devices.value.find(({ id }) => id === deviceId);
        if (device !== undefined) await forgetDevice(device);
        noteDevice(deviceId, null);
      }
      if (snifferId !== null) await ports.store.forgetSniffer(snifferId);
      await load();
    },
  };
}
