/** The connection to D-Bus: the few things of the library that the sniffer needs, with errors as values. Effects. */
import { createClient, DBusError, type Message, type MessageBus } from "dbus-native";
import { err, ok, type Result } from "../kernel/result.js";

/** An error reply, or what stands for one where no reply came. */
export interface BusError {
  /** Such as org.freedesktop.DBus.Error.AccessDenied. */
  readonly name: string;
  readonly message: string;
}

export interface Call {
  readonly destination: string;
  readonly path: string;
  readonly interface: string;
  readonly member: string;
  readonly signature?: string;
  readonly body?: unknown[];
}

export interface Signal {
  readonly sender: string;
  readonly path: string;
  readonly interface: string;
  readonly member: string;
  readonly body: readonly unknown[];
}

/** What other programs may call at an object. Arguments and answers are of the types the signatures say. */
export interface ServedInterface {
  readonly name: string;
  readonly methods: Readonly<Record<string, ServedMethod>>;
  readonly properties: Readonly<Record<string, { readonly type: string; readonly get: () => unknown }>>;
}

export interface ServedMethod {
  readonly takes: string;
  readonly gives: string;
  /** The answer; undefined for none. An error goes out as the error reply. */
  readonly answer: (...args: unknown[]) => Result<unknown, BusError>;
}

export interface Bus {
  call(call: Call): Promise<Result<unknown, BusError>>;
  /** @param rule - D-Bus match rule; every signal that comes goes to the listener of `onSignal` */
  watch(rule: string): Promise<Result<unknown, BusError>>;
  onSignal(listener: (signal: Signal) => void): void;
  serve(path: string, served: ServedInterface): void;
  /** Lists everything served below this path (org.freedesktop.DBus.ObjectManager). */
  manageObjects(path: string): void;
  /** Sends PropertiesChanged. */
  announce(path: string, interfaceName: string, changed: Readonly<Record<string, unknown>>): void;
  onClosed(listener: () => void): void;
  close(): Promise<void>;
}

/** Longer than BlueZ takes to look through an application. */
const CALL_TIMEOUT_MS = 10_000;

/** @see D-Bus Specification, "Well-known Message Bus Instances": the system bus */
export const SYSTEM_BUS = "unix:path=/var/run/dbus/system_bus_socket";

/** @param address - as the D-Bus Specification writes server addresses */
export async function connectBus(address: string): Promise<Result<Bus, BusError>> {
  let client: MessageBus;
  try {
    client = createClient({ busAddress: address, direct: true, plainValues: true, timeout: CALL_TIMEOUT_MS });
  } catch (cause) {
    return err(busError(cause));
  }
  const failed = new Promise<Result<Bus, BusError>>((resolve) => {
    client.connection.on("error", (cause) => resolve(err(busError(cause))));
    client.connection.on("close", () => resolve(err({ name: DISCONNECTED, message: "connection closed" })));
  });
  // A faulty message from somebody else must not end the sniffer.
  client.connection.on("handlerError", () => undefined);
  const greeted = invoke(client, { ...DAEMON, member: "Hello" }).then((name) => {
    if (!name.ok) return name;
    client.name = String(name.value);
    return ok(busOf(client));
  });
  return Promise.race([greeted, failed]);
}

const DISCONNECTED = "org.freedesktop.DBus.Error.Disconnected";
const DAEMON = {
  destination: "org.freedesktop.DBus",
  path: "/org/freedesktop/DBus",
  interface: "org.freedesktop.DBus",
} as const;
const SIGNAL = 4;

function busOf(client: MessageBus): Bus {
  return {
    call: (call) => invoke(client, call),
    watch: (rule) => invoke(client, { ...DAEMON, member: "AddMatch", signature: "s", body: [rule] }),
    onSignal: (listener) => {
      client.connection.on("message", (message: Message) => {
        if (message.type === SIGNAL) listener(signalOf(message));
      });
    },
    serve: (path, served) => exportInterface(client, path, served),
    manageObjects: (path) => {
      client.exportObjectManager(path);
    },
    announce: (path, interfaceName, changed) => {
      client.emitPropertiesChanged(path, interfaceName, { ...changed });
    },
    onClosed: (listener) => {
      client.connection.on("close", listener);
    },
    close: () => client.close(),
  };
}

async function invoke(client: MessageBus, call: Call): Promise<Result<unknown, BusError>> {
  try {
    return ok(await client.invoke<unknown>({ ...call }));
  } catch (cause) {
    return err(busError(cause));
  }
}

function busError(cause: unknown): BusError {
  const message = cause instanceof Error ? cause.message : String(cause);
  const name = cause instanceof DBusError ? cause.dbusName : undefined;
  return { name: name ?? "org.freedesktop.DBus.Error.Failed", message };
}

function signalOf({ sender, path, interface: interfaceName, member, body }: Message): Signal {
  return {
    sender: sender ?? "",
    path: path ?? "",
    interface: interfaceName ?? "",
    member: member ?? "",
    body: body ?? [],
  };
}

function exportInterface(client: MessageBus, path: string, served: ServedInterface): void {
  // No prototype: a caller reaches what is served, and nothing else an object brings along.
  const object: Record<string, unknown> = Object.create(null) as Record<string, unknown>;
  for (const [member, { answer }] of Object.entries(served.methods)) {
    object[member] = (...args: unknown[]) => {
      const result = answer(...args);
      if (result.ok) return result.value ?? null;
      // The library answers with the name that an error carries.
      throw Object.assign(new Error(result.error.message), { dbusName: result.error.name });
    };
  }
  for (const [name, { get }] of Object.entries(served.properties)) {
    Object.defineProperty(object, name, { get });
  }
  client.exportInterface(object, path, {
    name: served.name,
    methods: Object.fromEntries(
      Object.entries(served.methods).map(([member, { takes, gives }]) => [member, [takes, gives, [], []]]),
    ),
    properties: Object.fromEntries(
      Object.entries(served.properties).map(([name, { type }]) => [name, { type, access: "read" }]),
    ),
  });
}
