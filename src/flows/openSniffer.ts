/** What a fresh connection has to tell before it is a sniffer: its layout must be sound, the rest may be missing. */
import type { CharacteristicAddress, LinkError } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import { decodeText } from "../profile/deviceInformation.js";
import { decodeLayout } from "../profile/layout.js";
import {
  BATTERY_LEVEL,
  FIRMWARE_REVISION,
  HUMIDITY,
  MANUFACTURER_NAME,
  MODEL_NUMBER,
  PRESSURE,
  STATUS,
  SWEEP,
  TEMPERATURE,
} from "../profile/uuids.js";
import { HEALTHY, takeBytes } from "./snifferBytes.js";
import type { ConnectedSniffer, SnifferFailure } from "./snifferState.js";

/** Read once after connecting. */
export const READ_ON_OPENING: readonly CharacteristicAddress[] = [
  STATUS,
  BATTERY_LEVEL,
  TEMPERATURE,
  HUMIDITY,
  PRESSURE,
];
/** Notified, where the sniffer can; what it cannot notify is read now and then instead. */
export const SUBSCRIBED: readonly CharacteristicAddress[] = [
  STATUS,
  SWEEP,
  TEMPERATURE,
  HUMIDITY,
  PRESSURE,
  BATTERY_LEVEL,
];
/** Without these a sniffer cannot sniff. */
export const INDISPENSABLE: readonly CharacteristicAddress[] = [STATUS, SWEEP];

/** What reading one characteristic brought. */
export type ReadValue = Result<Uint8Array, LinkError>;

/** A sniffer from its layout and its names; `badLayout` if this app cannot read it. */
export function snifferFrom(
  name: string,
  virtual: boolean,
  layoutBytes: Uint8Array,
  names: { readonly maker: ReadValue; readonly model: ReadValue; readonly firmware: ReadValue },
): Result<ConnectedSniffer, SnifferFailure> {
  const layout = decodeLayout(layoutBytes);
  if (!layout.ok) return err({ kind: "badLayout", error: layout.error });
  return ok({
    name,
    virtual,
    layout: layout.value,
    maker: textOf(names.maker),
    model: textOf(names.model),
    firmware: textOf(names.firmware),
    batteryPct: null,
    status: null,
    air: {},
    recentAir: [],
    lastRun: 0,
    assembly: null,
    health: HEALTHY,
    recent: [],
  });
}

/** Addresses of the names, for whoever reads them. */
export const NAME_ADDRESSES = { maker: MANUFACTURER_NAME, model: MODEL_NUMBER, firmware: FIRMWARE_REVISION };

/** Takes in the first readings; the run goes on from the one the sniffer last had. */
export function withFirstReadings(
  sniffer: ConnectedSniffer,
  readings: readonly { readonly address: CharacteristicAddress; readonly value: ReadValue }[],
): ConnectedSniffer {
  const told = readings.reduce(
    (known, { address, value }) => (value.ok ? takeBytes(known, address, value.value).sniffer : known),
    sniffer,
  );
  return { ...told, lastRun: told.status?.run ?? 0 };
}

/** What the user is told when a connection fails. */
export function failureOf(error: LinkError): SnifferFailure {
  switch (error.kind) {
    case "lost":
      return { kind: "unreachable" };
    case "absent":
      return { kind: "notASniffer" };
    default:
      return { kind: "unexpected", detail: error.detail };
  }
}

function textOf(value: ReadValue): string | null {
  if (!value.ok) return null;
  const text = decodeText(value.value);
  return text.ok && text.value.trim() !== "" ? text.value : null;
}
