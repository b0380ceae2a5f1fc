import { sameAddress } from "../kernel/link.js";
/** Shows a peripheral on D-Bus as BlueZ wants a GATT application to look, and passes its notifications on. Effects. */
import { err, ok, type Result } from "../kernel/result.js";
import { encodeControl } from "../profile/control.js";
import { decodeStatus } from "../profile/status.js";
import { CONTROL, SNIFFER_SERVICE, STATUS, SWEEP } from "../profile/uuids.js";
import { INVALID_OFFSET, readError, writeError } from "./bluezError.js";
import type { Bus, BusError, ServedInterface } from "./bus.js";

import {
  ADVERTISEMENT_PATH,
  APPLICATION_PATH,
  gattTree,
  type GattCharacteristic,
  type GattService,
} from "./gattTree.js";
import type { Clock, Peripheral } from "./peripheral.js";
import { isAbandoned, NOBODY, stepPresence, type PresenceEvent } from "./presence.js";

export interface GattServer {
  /** What BlueZ said about devices and the adapter. */
  presence(event: PresenceEvent): void;
  /** Ends a run that nobody has followed for too long; to be called now and then. */
  tick(): void;
  /** The adapter is another, or back: nobody is subscribed any more. */
  forgetSubscribers(): void;
}

export interface GattServerOptions {
  readonly bus: Bus;
  readonly peripheral: Peripheral;
  readonly clock: Clock;
  /** Shown to whoever looks for sniffers. */
  readonly name: string;
  /** BlueZ dropped the advertisement. */
  readonly onReleased: () => void;
}

const CHARACTERISTIC = "org.bluez.GattCharacteristic1";
const SERVICE = "org.bluez.GattService1";
const ADVERTISEMENT = "org.bluez.LEAdvertisement1";

/** Puts the application and the advertisement on the bus. They are not registered by this. */
export function serveGatt(options: GattServerOptions): GattServer {
  const { bus, peripheral, clock } = options;
  const subscribed = new Set<string>();
  let presence = NOBODY;
  const tell = (event: PresenceEvent): void => {
    presence = stepPresence(presence, clock.nowMs(), event);
  };
  const tree = gattTree(peripheral.addresses);
  const byKey = new Map(tree.flatMap(({ characteristics }) => characteristics.map((it) => [keyOf(it), it])));
  const latest = new Map<string, Uint8Array>();

  bus.manageObjects(APPLICATION_PATH);
  for (const service of tree) {
    bus.serve(service.path, serviceInterface(service));
    for (const characteristic of service.characteristics) {
      bus.serve(
        characteristic.path,
        characteristicInterface({ peripheral, subscribed, latest, tell }, characteristic),
      );
    }
  }
  bus.serve(ADVERTISEMENT_PATH, advertisement(options));
  peripheral.onNotification(({ address, bytes }) => {
    const characteristic = byKey.get(keyOf({ address }));
    if (characteristic === undefined) return;
    latest.set(characteristic.path, bytes);
    // What nobody took is dropped: a frame is never sent twice.
    if (!subscribed.has(characteristic.path)) return;
    bus.announce(characteristic.path, CHARACTERISTIC, { Value: bytes });
  });
  return {
    presence: tell,
    tick: () => {
      if (isAbandoned(presence, clock.nowMs()) && isMeasuring(peripheral)) {
        peripheral.write(CONTROL, encodeControl({ kind: "stop" }));
      }
    },
    forgetSubscribers: () => {
      subscribed.clear();
      tell({ kind: "adapterGone" });
    },
  };
}

const keyOf = ({ address }: Pick<GattCharacteristic, "address">): string =>
  `${address.service}/${address.characteristic}`;

function isMeasuring(peripheral: Peripheral): boolean {
  const value = peripheral.read(STATUS);
  const status = value.ok ? decodeStatus(value.value) : undefined;
  return status?.ok === true && status.value.state === "measuring";
}

function serviceInterface({ uuid }: GattService): ServedInterface {
  return {
    name: SERVICE,
    methods: {},
    properties: {
      UUID: { type: "s", get: () => uuid },
      Primary: { type: "b", get: () => true },
    },
  };
}

interface Shared {
  readonly peripheral: Peripheral;
  /** Paths of characteristics whose notifications somebody wants. */
  readonly subscribed: Set<string>;
  /** The latest notification of each path. */
  readonly latest: ReadonlyMap<string, Uint8Array>;
  readonly tell: (event: PresenceEvent) => void;
}

/** @see BlueZ, doc/org.bluez.GattCharacteristic.rst, "Server" */
function characteristicInterface(shared: Shared, it: GattCharacteristic): ServedInterface {
  const { subscribed, latest, tell } = shared;
  const notifies = it.flags.includes("notify");
  const listen = (on: boolean) => (): Result<undefined, BusError> => {
    if (!notifies) return err({ name: "org.bluez.Error.NotSupported", message: "it does not notify" });
    if (on) subscribed.add(it.path);
    else subscribed.delete(it.path);
    if (sameAddress(it.address, SWEEP)) tell({ kind: "listening", on });
    return ok(undefined);
  };
  return {
    name: CHARACTERISTIC,
    methods: {
      ReadValue: { takes: "a{sv}", gives: "ay", answer: (options) => read(shared, it, optionsOf(options)) },
      WriteValue: {
        takes: "aya{sv}",
        gives: "",
        answer: (value, options) => write(shared, it, value, optionsOf(options)),
      },
      StartNotify: { takes: "", gives: "", answer: listen(true) },
      StopNotify: { takes: "", gives: "", answer: listen(false) },
    },
    properties: {
      UUID: { type: "s", get: () => it.address.characteristic },
      Service: { type: "o", get: () => it.path.slice(0, it.path.lastIndexOf("/")) },
      Flags: { type: "as", get: () => it.flags },
      ...(notifies
        ? {
            Notifying: { type: "b", get: () => subscribed.has(it.path) },
            Value: { type: "ay", get: () => latest.get(it.path) ?? new Uint8Array() },
          }
        : {}),
    },
  };
}

interface RequestOptions {
  readonly offset: number;
  readonly device: string | null;
  /** BlueZ only asks whether a long write may begin. */
  readonly onlyAsks: boolean;
}

function optionsOf(value: unknown): RequestOptions {
  const options = typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
  const { offset, device } = options;
  return {
    offset: typeof offset === "number" ? offset : 0,
    device: typeof device === "string" ? device : null,
    onlyAsks: options["prepare-authorize"] === true,
  };
}

function read(
  { peripheral, tell }: Shared,
  { address }: GattCharacteristic,
  { offset, device }: RequestOptions,
): Result<Uint8Array, BusError> {
  tell({ kind: "asked", device });
  const value = peripheral.read(address);
  if (!value.ok) return err(readError(value.error));
  return offset > value.value.length ? err(INVALID_OFFSET) : ok(value.value.subarray(offset));
}

function write(
  { peripheral, tell }: Shared,
  { address }: GattCharacteristic,
  value: unknown,
  { offset, device, onlyAsks }: RequestOptions,
): Result<undefined, BusError> {
  tell({ kind: "asked", device });
  if (onlyAsks) return ok(undefined);
  if (offset !== 0 || !(value instanceof Uint8Array)) return err(INVALID_OFFSET);
  const attError = peripheral.write(address, value);
  return attError === 0 ? ok(undefined) : err(writeError(attError));
}

/** @see BlueZ, doc/org.bluez.LEAdvertisement.rst */
function advertisement({ name, onReleased }: GattServerOptions): ServedInterface {
  const release = (): Result<undefined, BusError> => {
    onReleased();
    return ok(undefined);
  };
  return {
    name: ADVERTISEMENT,
    methods: { Release: { takes: "", gives: "", answer: release } },
    properties: {
      Type: { type: "s", get: () => "peripheral" },
      ServiceUUIDs: { type: "as", get: () => [SNIFFER_SERVICE] },
      LocalName: { type: "s", get: () => name },
      Discoverable: { type: "b", get: () => true },
    },
  };
}
