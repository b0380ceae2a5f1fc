import type { CharacteristicAddress, Link } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import {
  failureOf,
  INDISPENSABLE,
  NAME_ADDRESSES,
  READ_ON_OPENING,
  SUBSCRIBED,
  snifferFrom,
  withFirstReadings,
} from "../flows/openSniffer.js";
import type { ConnectedSniffer, SnifferFailure } from "../flows/snifferState.js";
import { LAYOUT } from "../profile/uuids.js";

export type OnBytes = (address: CharacteristicAddress, bytes: Uint8Array) => void;

export interface OpenedSniffer {
  readonly sniffer: ConnectedSniffer;
  /** What the sniffer cannot notify and must be asked for. */
  readonly polled: readonly CharacteristicAddress[];
}

/** Reads who the sniffer is over a fresh link and subscribes to all it can notify. Never throws. */
export async function openSniffer(
  link: Link,
  virtual: boolean,
  onBytes: OnBytes,
): Promise<Result<OpenedSniffer, SnifferFailure>> {
  const identified = await identify(link, virtual);
  if (!identified.ok) return identified;
  const readings = [];
  for (const address of READ_ON_OPENING) readings.push({ address, value: await link.read(address) });
  const polled: CharacteristicAddress[] = [];
  for (const address of SUBSCRIBED) {
    const subscribed = await link.subscribe(address, (bytes) => onBytes(address, bytes));
    if (subscribed.ok) continue;
    if (INDISPENSABLE.includes(address)) return err(failureOf(subscribed.error));
    if (subscribed.error.kind !== "absent") polled.push(address);
  }
  return ok({ sniffer: withFirstReadings(identified.value, readings), polled });
}

/** The layout is read once more if it came garbled; the names may be missing. */
async function identify(link: Link, virtual: boolean): Promise<Result<ConnectedSniffer, SnifferFailure>> {
  const names = {
    maker: await link.read(NAME_ADDRESSES.maker),
    model: await link.read(NAME_ADDRESSES.model),
    firmware: await link.read(NAME_ADDRESSES.firmware),
  };
  const first = await link.read(LAYOUT);
  if (!first.ok) return err(failureOf(first.error));
  const sniffer = snifferFrom(link.name, virtual, first.value, names);
  if (sniffer.ok || sniffer.error.kind !== "badLayout" || sniffer.error.error.kind === "profileVersion") {
    return sniffer;
  }
  const second = await link.read(LAYOUT);
  return second.ok ? snifferFrom(link.name, virtual, second.value, names) : err(failureOf(second.error));
}
