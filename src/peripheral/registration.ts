/** Keeps the sniffer registered with BlueZ, through adapters that go and come back. Effects: calls over D-Bus. */
import { err, ok, type Result } from "../kernel/result.js";
import {
  ADAPTER,
  ADVERTISING_MANAGER,
  chooseAdapter,
  GATT_MANAGER,
  nameOf,
  parseObjects,
} from "./adapters.js";
import type { Bus, BusError, Signal } from "./bus.js";
import { ADVERTISEMENT_PATH, APPLICATION_PATH } from "./gattTree.js";
import type { Clock } from "./peripheral.js";
import type { Problem } from "./problem.js";
import type { PresenceEvent } from "./presence.js";

export interface RegistrationOptions {
  readonly bus: Bus;
  readonly clock: Clock;
  /** Such as "hci0"; null: any that can serve. */
  readonly wanted: string | null;
  /** It is served on this adapter now. */
  readonly onServed: (adapter: string) => void;
  /** It is not served now, and will be tried again. */
  readonly onProblem: (problem: Problem) => void;
  /** A device left, or the adapter did. */
  readonly onPresence: (event: PresenceEvent) => void;
}

export interface Registration {
  /** Registers now, or again. @returns why it could not */
  attempt(): Promise<Result<string, Problem>>;
  /** From now on every change at BlueZ, and time, lead to another attempt when one is needed. */
  keep(signal: AbortSignal): Promise<void>;
  /** BlueZ dropped the advertisement. */
  released(): void;
  /** Takes both back from BlueZ. */
  withdraw(): Promise<void>;
}

const BLUEZ = "org.bluez";
const DEVICE = "org.bluez.Device1";
/** Backoff between attempts that nothing at BlueZ called for. */
const FIRST_RETRY_MS = 1000;
const LAST_RETRY_MS = 30_000;

interface Standing {
  adapter: string | null;
  application: boolean;
  advertisement: boolean;
}

/** Listens to BlueZ from the start, so that nothing that happens during an attempt is missed. */
export async function openRegistration(options: RegistrationOptions): Promise<Result<Registration, Problem>> {
  const { bus } = options;
  const standing: Standing = { adapter: null, application: false, advertisement: false };
  let wake: AbortController = new AbortController();
  const changed = (): void => wake.abort();
  bus.onSignal((signal) => {
    if (takeSignal(standing, signal, options.onPresence)) changed();
  });
  for (const rule of [
    `type='signal',sender='${BLUEZ}'`,
    `type='signal',sender='org.freedesktop.DBus',member='NameOwnerChanged',arg0='${BLUEZ}'`,
  ]) {
    const watched = await bus.watch(rule);
    if (!watched.ok) return err(problemOf(watched.error, "adapters", ""));
  }
  return ok({
    attempt: () => attempt(options, standing),
    keep: async (signal) => {
      let retryMs = FIRST_RETRY_MS;
      while (!signal.aborted) {
        wake = new AbortController();
        const complete = standing.application && standing.advertisement;
        const served = complete ? ok(standing.adapter ?? "") : await attempt(options, standing);
        if (served.ok) retryMs = FIRST_RETRY_MS;
        if (served.ok && !complete) options.onServed(nameOf(served.value));
        if (!served.ok) options.onProblem(served.error);
        await options.clock.wait(served.ok ? LAST_RETRY_MS : retryMs, AbortSignal.any([signal, wake.signal]));
        if (!served.ok) retryMs = Math.min(LAST_RETRY_MS, 2 * retryMs);
      }
    },
    released: () => {
      standing.advertisement = false;
      changed();
    },
    withdraw: () => withdraw(bus, standing),
  });
}

/** Notes what a signal of BlueZ's means. @returns does it call for another look? */
function takeSignal(standing: Standing, signal: Signal, onPresence: (event: PresenceEvent) => void): boolean {
  const [first, second] = signal.body;
  switch (signal.member) {
    case "NameOwnerChanged":
      if (first !== BLUEZ) return false;
      forget(standing);
      onPresence({ kind: "adapterGone" });
      return true;
    case "InterfacesRemoved":
      return interfacesRemoved(standing, String(first), second, onPresence);
    case "InterfacesAdded":
      return (
        typeof second === "object" && second !== null && (ADAPTER in second || ADVERTISING_MANAGER in second)
      );
    case "PropertiesChanged":
      return propertiesChanged(standing, signal.path, String(first), second, onPresence);
    default:
      return false;
  }
}

function interfacesRemoved(
  standing: Standing,
  path: string,
  interfaces: unknown,
  onPresence: (event: PresenceEvent) => void,
): boolean {
  if (!Array.isArray(interfaces)) return false;
  if (interfaces.includes(DEVICE)) onPresence({ kind: "disconnected", device: path });
  const ours = path === standing.adapter;
  if (!ours || ![ADAPTER, GATT_MANAGER, ADVERTISING_MANAGER].some((name) => interfaces.includes(name)))
    return false;
  forget(standing);
  onPresence({ kind: "adapterGone" });
  return true;
}

function propertiesChanged(
  standing: Standing,
  path: string,
  interfaceName: string,
  changed: unknown,
  onPresence: (event: PresenceEvent) => void,
): boolean {
  if (typeof changed !== "object" || changed === null) return false;
  if (interfaceName === DEVICE && "Connected" in changed && changed.Connected === false) {
    onPresence({ kind: "disconnected", device: path });
  }
  if (interfaceName !== ADAPTER || !("Powered" in changed)) return false;
  // Switched off, the controller forgets what it advertised, whatever BlueZ remembers.
  if (path === standing.adapter && changed.Powered === false) standing.advertisement = false;
  return true;
}

function forget(standing: Standing): void {
  standing.adapter = null;
  standing.application = false;
  standing.advertisement = false;
}

async function attempt(
  { bus, wanted }: RegistrationOptions,
  standing: Standing,
): Promise<Result<string, Problem>> {
  const listed = await bus.call({
    destination: BLUEZ,
    path: "/",
    interface: "org.freedesktop.DBus.ObjectManager",
    member: "GetManagedObjects",
  });
  if (!listed.ok) return err(problemOf(listed.error, "adapters", ""));
  const objects = parseObjects(listed.value);
  if (objects === null) {
    return err({ kind: "bluezRefused", step: "adapters", detail: "it lists something else than objects" });
  }
  const chosen = chooseAdapter(objects, wanted);
  if (!chosen.ok) return chosen;
  const adapter = chosen.value;
  if (adapter !== standing.adapter) {
    forget(standing);
    standing.adapter = adapter;
  }
  if (!standing.application) {
    const registered = await register(bus, adapter, GATT_MANAGER, "RegisterApplication", APPLICATION_PATH);
    if (registered !== null) return err(problemOf(registered, "application", nameOf(adapter)));
    standing.application = standing.adapter === adapter;
  }
  if (!standing.advertisement) {
    const registered = await advertise(bus, adapter);
    if (registered !== null) return err(problemOf(registered, "advertisement", nameOf(adapter)));
    standing.advertisement = standing.adapter === adapter;
  }
  return ok(adapter);
}

/** BlueZ may still hold one from before it was switched off: that one is given back first. */
async function advertise(bus: Bus, adapter: string): Promise<BusError | null> {
  await unregister(bus, adapter, ADVERTISING_MANAGER, "UnregisterAdvertisement", ADVERTISEMENT_PATH);
  return register(bus, adapter, ADVERTISING_MANAGER, "RegisterAdvertisement", ADVERTISEMENT_PATH);
}

async function withdraw(bus: Bus, standing: Standing): Promise<void> {
  const { adapter, application, advertisement } = standing;
  forget(standing);
  if (adapter === null) return;
  if (advertisement) {
    await unregister(bus, adapter, ADVERTISING_MANAGER, "UnregisterAdvertisement", ADVERTISEMENT_PATH);
  }
  if (application) await unregister(bus, adapter, GATT_MANAGER, "UnregisterApplication", APPLICATION_PATH);
}

/** @returns null where BlueZ took it, or has it already */
async function register(
  bus: Bus,
  path: string,
  interfaceName: string,
  member: string,
  object: string,
): Promise<BusError | null> {
  const call = { destination: BLUEZ, path, interface: interfaceName, member };
  const answer = await bus.call({ ...call, signature: "oa{sv}", body: [object, {}] });
  return answer.ok || answer.error.name === "org.bluez.Error.AlreadyExists" ? null : answer.error;
}

/** What BlueZ does not know any more is as good as taken back. */
async function unregister(
  bus: Bus,
  path: string,
  interfaceName: string,
  member: string,
  object: string,
): Promise<void> {
  const call = { destination: BLUEZ, path, interface: interfaceName, member };
  await bus.call({ ...call, signature: "o", body: [object] });
}

/** @see D-Bus Specification, "Standard error names"; BlueZ, doc/org.bluez.LEAdvertisingManager.rst */
function problemOf(
  { name, message }: BusError,
  step: "adapters" | "application" | "advertisement",
  adapter: string,
): Problem {
  const detail = message === "" || message === name ? name : `${name}: ${message}`;
  if (name === "org.freedesktop.DBus.Error.AccessDenied") {
    return { kind: "notPermitted", what: "to use BlueZ over D-Bus", detail: message };
  }
  if (name === "org.freedesktop.DBus.Error.Disconnected") return { kind: "busLost" };
  if (isNobodyThere(name)) return { kind: "noBluez", detail };
  if (step === "advertisement" && name === "org.bluez.Error.NotPermitted") {
    return { kind: "advertisingBusy", adapter, detail: message };
  }
  return { kind: "bluezRefused", step, detail };
}

/** Nobody owns the name, or the bus could not start who should. */
function isNobodyThere(name: string): boolean {
  return (
    ["org.freedesktop.DBus.Error.ServiceUnknown", "org.freedesktop.DBus.Error.NameHasNoOwner"].includes(
      name,
    ) ||
    name.startsWith("org.freedesktop.DBus.Error.Spawn.") ||
    name.startsWith("org.freedesktop.systemd1.")
  );
}
