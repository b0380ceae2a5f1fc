/** CONTROL: what the phone asks of the sniffer. PROFILE.md section 6. */
import { err, ok, type Result } from "../kernel/result.js";
import { checkWhole } from "./bytes.js";

export type ControlCommand =
  | { readonly kind: "start"; readonly run: number } // run 1 to 255, another than last time
  | { readonly kind: "stop" }
  | { readonly kind: "purge" };

/** Why a command is not one. The sniffer answers with the ATT error of the same name. */
export type ControlError =
  | { readonly kind: "unknownOpcode"; readonly opcode: number } // app newer than sniffer: update the firmware
  | { readonly kind: "badLength"; readonly found: number } // app fault
  | { readonly kind: "badRun"; readonly run: number }; // app fault: run 0 means "none"

/**
 * ATT application error codes a write to CONTROL may be answered with.
 *
 * @see Bluetooth Core, Vol 3 Part F, 3.4.1.1: 0x80 to 0x9f are the application's (value from memory)
 */
export const CONTROL_ATT_ERRORS = {
  notReady: 0x80,
  unknownOpcode: 0x81,
  badLength: 0x82,
  badRun: 0x83,
} as const;

export const LAST_RUN = 255;

const START = 0x01;
const STOP = 0x02;
const PURGE = 0x03;

/** @throws {RangeError} if the run is not whole, 1 to 255 */
export function encodeControl(command: ControlCommand): Uint8Array {
  if (command.kind === "stop") return Uint8Array.of(STOP);
  if (command.kind === "purge") return Uint8Array.of(PURGE);
  checkWhole("run", command.run, 1, LAST_RUN);
  return Uint8Array.of(START, command.run);
}

/** For the sniffer's side. Never throws. Exact lengths: a command is not a place for additions. */
export function decodeControl(bytes: Uint8Array): Result<ControlCommand, ControlError> {
  const [opcode, run] = bytes;
  if (opcode === undefined) return err({ kind: "badLength", found: 0 });
  if (opcode !== START && opcode !== STOP && opcode !== PURGE) return err({ kind: "unknownOpcode", opcode });
  if (bytes.length !== (opcode === START ? 2 : 1)) return err({ kind: "badLength", found: bytes.length });
  if (opcode === STOP) return ok({ kind: "stop" });
  if (opcode === PURGE) return ok({ kind: "purge" });
  return run === undefined || run === 0 ? err({ kind: "badRun", run: 0 }) : ok({ kind: "start", run });
}

/** The ATT error a sniffer answers a bad command with. */
export const attErrorOf = (error: ControlError): number => CONTROL_ATT_ERRORS[error.kind];

/** The run to ask for next, given the last one (0 if none): 1 to 255, round and round. */
export function nextRun(lastRun: number): number {
  checkWhole("run", lastRun, 0, LAST_RUN);
  return (lastRun % LAST_RUN) + 1;
}
