// A stand-in for BlueZ on a test's own bus: adapters that come and go, the GATT manager, the advertising manager, and
// a phone at the far end. It does what BlueZ's documents say (doc/org.bluez.*.rst), and no more.
import { createClient, type Message, type MessageBus } from "dbus-native";

type Properties = Record<string, unknown>;
type Objects = Record<string, Record<string, Properties>>;

export interface Application {
  readonly sender: string;
  readonly path: string;
  readonly objects: Objects;
}

/** What came of an ATT request: a value, or the ATT error the phone would get. */
export type AttAnswer = { readonly bytes: Uint8Array } | { readonly attError: number };

export interface StandInBluez {
  addAdapter(name: string, options?: { powered?: boolean; peripheral?: boolean; slots?: number }): void;
  removeAdapter(name: string): void;
  power(name: string, on: boolean): void;
  /** Ends as a stopped service does: its name goes off the bus. */
  stop(): Promise<void>;
  readonly applications: Map<string, Application>;
  /** Advertisements by adapter, each with the properties it was registered with. */
  readonly advertisements: Map<string, Properties[]>;
  releaseAdvertisement(adapter: string): Promise<void>;
  /** Until this holds; fails after some seconds. */
  until(condition: () => boolean, what: string): Promise<void>;
  read(characteristic: string, options?: { offset?: number; device?: string }): Promise<AttAnswer>;
  write(characteristic: string, bytes: Uint8Array, options?: Properties): Promise<AttAnswer>;
  subscribe(characteristic: string, on?: boolean): Promise<AttAnswer>;
  /** Every Value the application announced for a characteristic, in order. */
  announced(characteristic: string): Uint8Array[];
  /** A phone that was connected leaves. */
  disconnect(device: string): void;
}

const ADAPTER = "org.bluez.Adapter1";
const GATT = "org.bluez.GattManager1";
const ADVERTISING = "org.bluez.LEAdvertisingManager1";
const CHARACTERISTIC = "org.bluez.GattCharacteristic1";
const SERVICE = "org.bluez.GattService1";
const SIGNAL = 4;
/** Long, for a busy machine; what is awaited mostly comes at once. */
const PATIENCE_MS = 30_000;
const pathOf = (name: string) => `/org/bluez/${name}`;
const failure = (dbusName: string, message: string) => Object.assign(new Error(message), { dbusName });

export async function startStandInBluez(address: string): Promise<StandInBluez> {
  const bus = createClient({ busAddress: address, plainValues: true, timeout: 5000 });
  bus.connection.on("error", () => undefined);
  await bus.ownName("org.bluez");
  bus.exportObjectManager("/");
  const adapters = new Map<string, Properties>();
  const applications = new Map<string, Application>();
  const advertisements = new Map<string, (Properties & { path: string; sender: string })[]>();
  const values: { path: string; sender: string; bytes: Uint8Array }[] = [];
  bus.connection.on("message", (message: Message) => {
    const [interfaceName, changed] = (message.body ?? []) as [unknown, Properties | undefined];
    if (message.type !== SIGNAL || message.member !== "PropertiesChanged") return;
    if (interfaceName !== CHARACTERISTIC || !(changed?.["Value"] instanceof Uint8Array)) return;
    values.push({ path: message.path ?? "", sender: message.sender ?? "", bytes: changed["Value"] });
  });
  await bus.addMatch("type='signal',member='PropertiesChanged'");

  const applicationOf = (): Application => {
    const [first] = applications.values();
    if (first === undefined) throw new Error("no application is registered");
    return first;
  };
  const characteristicOf = (uuid: string): { sender: string; path: string; properties: Properties } => {
    const { sender, objects } = applicationOf();
    for (const [path, interfaces] of Object.entries(objects)) {
      const properties = interfaces[CHARACTERISTIC];
      if (properties?.["UUID"] === uuid) return { sender, path, properties };
    }
    throw new Error(`no characteristic ${uuid}`);
  };
  const request = async (
    uuid: string,
    member: string,
    signature: string,
    body: unknown[],
  ): Promise<AttAnswer> => {
    const { sender, path } = characteristicOf(uuid);
    try {
      const call = { destination: sender, path, interface: CHARACTERISTIC, member };
      const answer = await bus.invoke<unknown>(signature === "" ? call : { ...call, signature, body });
      return { bytes: Uint8Array.from(answer instanceof Uint8Array ? answer : []) };
    } catch (cause) {
      return { attError: attErrorOf(cause, member === "WriteValue" ? 0x03 : 0x02) };
    }
  };
  const flagged = (uuid: string, flag: string): boolean =>
    (characteristicOf(uuid).properties["Flags"] as string[]).includes(flag);

  return {
    applications,
    advertisements,
    addAdapter: (name, { powered = true, peripheral = true, slots = 1 } = {}) => {
      const properties: Properties = { Powered: powered, Address: "00:00:5E:00:53:01" };
      adapters.set(name, properties);
      advertisements.set(name, []);
      bus.exportInterface(properties, pathOf(name), {
        name: ADAPTER,
        properties: { Powered: { type: "b", access: "read" }, Address: { type: "s", access: "read" } },
      });
      if (!peripheral) return;
      bus.exportInterface(gattManager(bus, name, applications), pathOf(name), {
        name: GATT,
        methods: {
          RegisterApplication: ["oa{sv}", "", [], []],
          UnregisterApplication: ["o", "", [], []],
        },
      });
      bus.exportInterface(advertisingManager(bus, advertisements.get(name)!, slots), pathOf(name), {
        name: ADVERTISING,
        methods: {
          RegisterAdvertisement: ["oa{sv}", "", [], []],
          UnregisterAdvertisement: ["o", "", [], []],
        },
      });
    },
    removeAdapter: (name) => {
      adapters.delete(name);
      applications.delete(name);
      advertisements.delete(name);
      bus.unexportInterface(pathOf(name));
    },
    power: (name, on) => {
      adapters.get(name)!["Powered"] = on;
      // The controller forgets what it advertised; the application's registration stays in the books.
      for (const one of advertisements.get(name)!) one["onAir"] = false;
      bus.emitPropertiesChanged(pathOf(name), ADAPTER, { Powered: on });
    },
    stop: () => bus.close(),
    releaseAdvertisement: async (adapter) => {
      const [dropped] = advertisements.get(adapter)!.splice(0, 1);
      await bus.invoke({
        destination: dropped!.sender,
        path: dropped!.path,
        interface: "org.bluez.LEAdvertisement1",
        member: "Release",
      });
    },
    until: async (condition, what) => {
      for (const endMs = Date.now() + PATIENCE_MS; Date.now() < endMs;) {
        if (condition()) return;
        await new Promise((resolve) => setTimeout(resolve, 10));
      }
      throw new Error(`waited in vain: ${what}`);
    },
    read: async (uuid, { offset, device = "/org/bluez/hci0/dev_1" } = {}) => {
      if (!flagged(uuid, "read")) return { attError: 0x02 };
      const options = { ...(offset === undefined ? {} : { offset: ["q", offset] }), device: ["o", device] };
      return request(uuid, "ReadValue", "a{sv}", [Object.entries(options)]);
    },
    write: async (uuid, bytes, options = {}) => {
      if (!flagged(uuid, "write")) return { attError: 0x03 };
      const all = { type: ["s", "request"], device: ["o", "/org/bluez/hci0/dev_1"], ...options };
      return request(uuid, "WriteValue", "aya{sv}", [bytes, Object.entries(all)]);
    },
    subscribe: (uuid, on = true) => request(uuid, on ? "StartNotify" : "StopNotify", "", []),
    announced: (uuid) => {
      const { sender, path } = characteristicOf(uuid);
      return values
        .filter((value) => value.sender === sender && value.path === path)
        .map(({ bytes }) => bytes);
    },
    disconnect: (device) => {
      bus.sendSignal(device, "org.freedesktop.DBus.Properties", "PropertiesChanged", "sa{sv}as", [
        "org.bluez.Device1",
        [["Connected", ["b", false]]],
        [],
      ]);
    },
  };
}

/** @see BlueZ, doc/org.bluez.GattManager.rst: it looks through the application's Object Manager, then answers */
function gattManager(bus: MessageBus, name: string, applications: Map<string, Application>) {
  return {
    RegisterApplication: async (path: string, _options: unknown, message: Message) => {
      const sender = message.sender ?? "";
      const held = applications.get(name);
      if (held?.sender === sender && held.path === path)
        throw failure("org.bluez.Error.AlreadyExists", "Already Exists");
      const objects = await bus.invoke<Objects>({
        destination: sender,
        path,
        interface: "org.freedesktop.DBus.ObjectManager",
        member: "GetManagedObjects",
      });
      const fault = faultOf(path, objects);
      if (fault !== null) throw failure("org.bluez.Error.InvalidArguments", fault);
      applications.set(name, { sender, path, objects });
      return null;
    },
    UnregisterApplication: (path: string) => {
      if (applications.get(name)?.path !== path)
        throw failure("org.bluez.Error.DoesNotExist", "Does Not Exist");
      applications.delete(name);
      return null;
    },
  };
}

/** What BlueZ's own reading of the objects (src/gatt-database.c) asks of them. */
function faultOf(root: string, objects: Objects): string | null {
  const services = Object.keys(objects).filter((path) => objects[path]?.[SERVICE] !== undefined);
  if (services.length === 0) return "No object received";
  for (const [path, interfaces] of Object.entries(objects)) {
    const service = interfaces[SERVICE];
    const characteristic = interfaces[CHARACTERISTIC];
    if (!path.startsWith(`${root}/`)) return `${path} is not below ${root}`;
    if (service !== undefined && (!isUuid(service["UUID"]) || typeof service["Primary"] !== "boolean")) {
      return `service ${path}`;
    }
    if (characteristic === undefined) continue;
    const flags = characteristic["Flags"];
    const known = ["read", "write", "notify"];
    if (!isUuid(characteristic["UUID"]) || !services.includes(String(characteristic["Service"]))) {
      return `characteristic ${path}`;
    }
    if (!Array.isArray(flags) || flags.length === 0 || !flags.every((flag) => known.includes(String(flag)))) {
      return `flags of ${path}`;
    }
  }
  return null;
}

const isUuid = (value: unknown): boolean =>
  typeof value === "string" && /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(value);

/** @see BlueZ, doc/org.bluez.LEAdvertisingManager.rst: NotPermitted when no instance is left */
function advertisingManager(
  bus: MessageBus,
  held: (Properties & { path: string; sender: string })[],
  slots: number,
) {
  return {
    RegisterAdvertisement: async (path: string, _options: unknown, message: Message) => {
      const sender = message.sender ?? "";
      if (held.some((one) => one.path === path && one.sender === sender)) {
        throw failure("org.bluez.Error.AlreadyExists", "Already Exists");
      }
      if (held.length >= slots) {
        throw failure("org.bluez.Error.NotPermitted", "Maximum advertisements reached");
      }
      const properties = await bus.invoke<Properties>({
        destination: sender,
        path,
        interface: "org.freedesktop.DBus.Properties",
        member: "GetAll",
        signature: "s",
        body: ["org.bluez.LEAdvertisement1"],
      });
      if (properties["Type"] !== "peripheral" && properties["Type"] !== "broadcast") {
        throw failure("org.bluez.Error.InvalidArguments", "Type");
      }
      held.push({ ...properties, path, sender, onAir: true });
      return null;
    },
    UnregisterAdvertisement: (path: string, message: Message) => {
      const at = held.findIndex((one) => one.path === path && one.sender === message.sender);
      if (at < 0) throw failure("org.bluez.Error.DoesNotExist", "Does Not Exist");
      held.splice(at, 1);
      return null;
    },
  };
}

/**
 * The ATT error a phone gets for an application's error reply.
 *
 * @see BlueZ, src/gatt-database.c, dbus_error_to_att_ecode: the number in the message of Failed, 0x80 to 0x9f; 0x80
 *   where the message is none; the rest by name (ATT numbers: Bluetooth Core, Vol 3 Part F, 3.4.1.1)
 */
function attErrorOf(cause: unknown, notPermitted: number): number {
  const { dbusName, message } = cause as { dbusName?: string; message: string };
  switch (dbusName) {
    case "org.bluez.Error.Failed": {
      if (!/^(0x[0-9a-f]+|\d+)$/i.test(message)) return 0x80;
      const code = Number(message);
      return code >= 0x80 && code <= 0x9f ? code : 0x0e;
    }
    case "org.bluez.Error.NotSupported":
      return 0x06;
    case "org.bluez.Error.NotAuthorized":
      return 0x08;
    case "org.bluez.Error.InvalidValueLength":
      return 0x0d;
    case "org.bluez.Error.InvalidOffset":
      return 0x07;
    case "org.bluez.Error.InProgress":
      return 0xfe;
    case "org.bluez.Error.NotPermitted":
      return notPermitted;
    default:
      return 0x0e;
  }
}
