/** STATUS: what the sniffer is doing. PROFILE.md section 5. */
import { err, ok, type Result } from "../kernel/result.js";
import { checkWhole, littleEndian, viewOf } from "./bytes.js";

/** In the order of their numbers on the air. */
export const SNIFFER_STATES = ["cold", "warming", "ready", "measuring", "purging", "fault"] as const;
export type SnifferState = (typeof SNIFFER_STATES)[number];

export interface SnifferStatus {
  readonly state: SnifferState;
  /** A sensor's heater draws no current, or too much: its resistances mean nothing. */
  readonly heaterFault: boolean;
  /** The start command this belongs to, 1 to 255; 0 if there was none since switching on. */
  readonly run: number;
  /** 0 once warm. */
  readonly warmUpLeftMs: number;
  /** Milliseconds since switching on, modulo 2^32. */
  readonly deviceTimeMs: number;
  /** Whole hours the sensors have been heated in their life; 65535 stands for that or more. */
  readonly burnInHours: number;
}

/** Why a status could not be read. */
export type StatusError =
  | { readonly kind: "length"; readonly expected: number; readonly found: number } // firmware fault: report it to its author
  | { readonly kind: "unknownState"; readonly raw: number }; // a state newer than this app: update the app

export const MOST_BURN_IN_HOURS = 0xffff;

const STATUS_OCTETS = 13;
const HEATER_FAULT = 0x01;

/** @throws {RangeError} if a number does not fit its field */
export function encodeStatus(status: SnifferStatus): Uint8Array {
  const { state, heaterFault, run, warmUpLeftMs, deviceTimeMs, burnInHours } = status;
  checkWhole("run", run, 0, 255);
  checkWhole("warm-up left", warmUpLeftMs, 0, 0xffffffff);
  checkWhole("device time", deviceTimeMs, 0, 0xffffffff);
  checkWhole("burn-in", burnInHours, 0, MOST_BURN_IN_HOURS);
  return littleEndian(
    [SNIFFER_STATES.indexOf(state), 1],
    [heaterFault ? HEATER_FAULT : 0, 1],
    [run, 1],
    [warmUpLeftMs, 4],
    [deviceTimeMs, 4],
    [burnInHours, 2],
  );
}

/** Never throws. Unknown flags, and octets after the known ones, belong to newer minor versions: passed over. */
export function decodeStatus(bytes: Uint8Array): Result<SnifferStatus, StatusError> {
  if (bytes.length < STATUS_OCTETS) {
    return err({ kind: "length", expected: STATUS_OCTETS, found: bytes.length });
  }
  const view = viewOf(bytes);
  const state = SNIFFER_STATES[view.getUint8(0)];
  if (state === undefined) return err({ kind: "unknownState", raw: view.getUint8(0) });
  return ok({
    state,
    heaterFault: (view.getUint8(1) & HEATER_FAULT) !== 0,
    run: view.getUint8(2),
    warmUpLeftMs: view.getUint32(3, true),
    deviceTimeMs: view.getUint32(7, true),
    burnInHours: view.getUint16(11, true),
  });
}
