/** Listens to one characteristic, and tells a notification from the answer to our own read. */

export interface NotificationTap {
  add(listener: (bytes: Uint8Array) => void): void;
  /** Wraps our own read, so that its answer is not also delivered as a notification. */
  whileReading(read: () => Promise<Uint8Array>): Promise<Uint8Array>;
  close(): void;
}

/**
 * A read that succeeds fires the same event as a notification, just before its promise settles. So while we read,
 * values are held back; then the last one is the answer, and the ones before it were notifications.
 *
 * @see Web Bluetooth draft, BluetoothRemoteGATTCharacteristic.readValue, last steps
 */
export function tapNotifications(characteristic: BluetoothRemoteGATTCharacteristic): NotificationTap {
  const listeners: ((bytes: Uint8Array) => void)[] = [];
  let held: Uint8Array[] | null = null;
  const deliver = (bytes: Uint8Array): void => {
    for (const listener of listeners) listener(bytes);
  };
  const onChange = (): void => {
    const bytes = octetsOf(characteristic.value);
    if (held === null) deliver(bytes);
    else held.push(bytes);
  };
  const letGo = (answer: Uint8Array | null): void => {
    const values = held ?? [];
    held = null;
    if (answer !== null && sameOctets(values.at(-1), answer)) values.pop();
    values.forEach(deliver);
  };
  characteristic.addEventListener("characteristicvaluechanged", onChange);
  return {
    add: (listener) => void listeners.push(listener),
    close: () => characteristic.removeEventListener("characteristicvaluechanged", onChange),
    async whileReading(read) {
      held = [];
      try {
        const answer = await read();
        letGo(answer);
        return answer;
      } catch (cause) {
        letGo(null);
        throw cause;
      }
    },
  };
}

/** A copy: the browser may reuse the buffer. */
export function octetsOf(value: DataView | undefined): Uint8Array {
  if (value === undefined) return new Uint8Array();
  return Uint8Array.from(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
}

function sameOctets(left: Uint8Array | undefined, right: Uint8Array): boolean {
  return left?.length === right.length && left.every((octet, i) => octet === right[i]);
}
