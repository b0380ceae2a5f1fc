/**
 * How a refusal travels through BlueZ to the phone. An application error 0x80 to 0x9f goes as the message of
 * org.bluez.Error.Failed; the standard ones have names of their own.
 *
 * A BlueZ from before that (August 2022) makes 0x80 of each; the phone reads STATUS to learn why, either way.
 *
 * @see BlueZ, doc/org.bluez.GattCharacteristic.rst, ReadValue and WriteValue ("Possible values: string 0x80 - 0x9f")
 */
import { CONTROL_ATT_ERRORS } from "../profile/control.js";
import { WRITE_NOT_PERMITTED } from "./coreCommand.js";
import type { ReadRefusal } from "./peripheral.js";

export interface BluezError {
  readonly name: string;
  readonly message: string;
}

const FIRST_APPLICATION_ERROR = 0x80;
const LAST_APPLICATION_ERROR = 0x9f;

/** The error to answer a write with. @param attError - not 0 */
export function writeError(attError: number): BluezError {
  if (attError >= FIRST_APPLICATION_ERROR && attError <= LAST_APPLICATION_ERROR)
    return applicationError(attError);
  return attError === WRITE_NOT_PERMITTED
    ? { name: "org.bluez.Error.NotPermitted", message: "not for writing" }
    : { name: "org.bluez.Error.NotSupported", message: `ATT error ${attError}` };
}

/** The error to answer a read with. */
export function readError(refusal: ReadRefusal): BluezError {
  switch (refusal) {
    case "unknown":
      return applicationError(CONTROL_ATT_ERRORS.notReady);
    case "refused":
      return { name: "org.bluez.Error.NotPermitted", message: "not for reading" };
    case "absent":
      return { name: "org.bluez.Error.NotSupported", message: "this sniffer does not have it" };
  }
}

/** For a read that begins behind the end of the value. */
export const INVALID_OFFSET: BluezError = {
  name: "org.bluez.Error.InvalidOffset",
  message: "behind the end of the value",
};

const applicationError = (code: number): BluezError => ({
  name: "org.bluez.Error.Failed",
  message: `0x${code.toString(16)}`,
});
