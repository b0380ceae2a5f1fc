/** What the phone may ask of a measuring sniffer. PROFILE.md section 6. */
import { sameAddress, type CharacteristicAddress } from "../kernel/link.js";
import { attErrorOf, CONTROL_ATT_ERRORS, decodeControl, type ControlCommand } from "../profile/control.js";
import { CONTROL } from "../profile/uuids.js";
import { statusOf, type PeripheralCore } from "./core.js";
import { addressesOf } from "./coreValues.js";

/** ATT errors of the standard. @see Bluetooth Core, Vol 3 Part F, 3.4.1.1 (values from memory) */
export const WRITE_NOT_PERMITTED = 0x03;
export const ATTRIBUTE_NOT_FOUND = 0x0a;

/**
 * A write with response.
 *
 * @returns the sniffer afterwards, and the ATT error it answers with: 0 where the write was taken
 */
export function writeValue(
  core: PeripheralCore,
  address: CharacteristicAddress,
  bytes: Uint8Array,
): { readonly core: PeripheralCore; readonly attError: number } {
  if (!sameAddress(address, CONTROL)) {
    const known = addressesOf(core.setup.senses).some((candidate) => sameAddress(candidate, address));
    return { core, attError: known ? WRITE_NOT_PERMITTED : ATTRIBUTE_NOT_FOUND };
  }
  const command = decodeControl(bytes);
  if (!command.ok) return { core, attError: attErrorOf(command.error) };
  if (!isAllowed(core, command.value)) return { core, attError: CONTROL_ATT_ERRORS.notReady };
  return { core: obey(core, command.value), attError: 0 };
}

function isAllowed(core: PeripheralCore, command: ControlCommand): boolean {
  const { state } = statusOf(core);
  if (command.kind === "stop" || state === "ready" || state === "measuring") return true;
  // STATUS says how cold it is; the phone waits for warm sweeps by itself.
  return command.kind === "start" && state === "warming";
}

function obey(core: PeripheralCore, command: ControlCommand): PeripheralCore {
  switch (command.kind) {
    case "stop":
      return { ...core, activity: { kind: "idle" } };
    case "purge":
      return { ...core, activity: { kind: "purging", endsAtMs: core.nowMs + core.setup.purgeMs } };
    case "start":
      return {
        ...core,
        run: command.run,
        activity: { kind: "measuring", sinceMs: core.nowMs, counter: 0 },
      };
  }
}
