/**
 * A hand-made device that behaves as the Web Bluetooth draft says where it matters here: a second call while one
 * runs is a NetworkError; a read fires characteristicvaluechanged just before it settles; disconnection rejects what
 * is under way and makes old characteristics invalid.
 */

export type Values = Record<string, Record<string, number[]>>;

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 1));
const fail = (name: string, message = name): never => {
  throw new DOMException(message, name);
};

class FakeCharacteristic extends EventTarget {
  value: DataView | undefined;
  notifying = false;
  constructor(
    readonly device: FakeDevice,
    readonly key: string,
    readonly generation: number,
  ) {
    super();
  }
  set(bytes: number[]): void {
    this.value = new DataView(Uint8Array.from(bytes).buffer);
    this.dispatchEvent(new Event("characteristicvaluechanged"));
  }
  readValue(): Promise<DataView> {
    return this.device.operate(`read ${this.key}`, this.generation, () => {
      const bytes = this.device.valueOf_(this.key);
      this.set(bytes);
      return this.value!;
    });
  }
  writeValueWithResponse(data: Uint8Array): Promise<void> {
    return this.device.operate(`write ${this.key} ${[...data].join(",")}`, this.generation, () => undefined);
  }
  startNotifications(): Promise<FakeCharacteristic> {
    return this.device.operate(`subscribe ${this.key}`, this.generation, () => {
      this.notifying = true;
      return this;
    });
  }
}

export class FakeDevice extends EventTarget {
  readonly name = "Sniffer";
  readonly log: string[] = [];
  /** Thrown by the next operations, in turn; null lets one through. */
  readonly failures: (DOMException | null)[] = [];
  readonly connectFailures: DOMException[] = [];
  /** Called in the midst of each operation. */
  during: (operation: string) => void = () => undefined;
  connectTakesForever = false;
  private busy = false;
  private generation = 0;
  private rejectConnect: ((cause: unknown) => void) | undefined;
  private readonly characteristics = new Map<string, FakeCharacteristic>();

  constructor(readonly values: Values) {
    super();
  }

  readonly gatt = {
    connected: false,
    connect: async () => {
      this.log.push("connect");
      await settle();
      const failure = this.connectFailures.shift();
      if (failure !== undefined) throw failure;
      if (this.connectTakesForever) await new Promise((_, reject) => (this.rejectConnect = reject));
      this.gatt.connected = true;
      return this.gatt;
    },
    disconnect: () => {
      this.log.push("disconnect");
      this.rejectConnect?.(new DOMException("given up", "AbortError"));
      if (this.gatt.connected) this.lose();
    },
    getPrimaryService: (service: string) =>
      this.operate(`service ${service}`, this.generation, () => ({
        getCharacteristic: (characteristic: string) =>
          this.operate(`characteristic ${characteristic}`, this.generation, () => {
            if (this.values[service]?.[characteristic] === undefined) fail("NotFoundError");
            return this.characteristicOf(`${service} ${characteristic}`);
          }),
      })).then((found) => (this.values[service] === undefined ? fail("NotFoundError") : found)),
  };

  valueOf_(key: string): number[] {
    const [service, characteristic] = key.split(" ");
    return this.values[service!]![characteristic!]!;
  }

  characteristicOf(key: string): FakeCharacteristic {
    const known = this.characteristics.get(key);
    if (known?.generation === this.generation) return known;
    const fresh = new FakeCharacteristic(this, key, this.generation);
    this.characteristics.set(key, fresh);
    return fresh;
  }

  async operate<T>(name: string, generation: number, act: () => T): Promise<T> {
    this.log.push(name);
    if (!this.gatt.connected) fail("NetworkError", "not connected");
    if (generation !== this.generation) fail("InvalidStateError");
    if (this.busy) fail("NetworkError", "already in progress");
    this.busy = true;
    try {
      await settle();
      this.during(name);
      const failure = this.failures.shift();
      if (failure) throw failure;
      if (!this.gatt.connected) fail("NetworkError", "disconnected");
      return act();
    } finally {
      this.busy = false;
    }
  }

  /** The sniffer pushes a value. */
  notify(key: string, bytes: number[]): void {
    const characteristic = this.characteristics.get(key);
    if (characteristic?.notifying && this.gatt.connected) characteristic.set(bytes);
  }

  /** The sniffer's table of services changes while connected: old objects become invalid. */
  changeTable(): void {
    this.generation += 1;
  }

  /** Out of range. */
  lose(): void {
    this.gatt.connected = false;
    this.generation += 1;
    this.dispatchEvent(new Event("gattserverdisconnected"));
  }
}

export const asDevice = (fake: FakeDevice): BluetoothDevice => fake as unknown as BluetoothDevice;
