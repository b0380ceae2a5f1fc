/**
 * A sniffer that exists only as numbers: physics to GATT bytes (PHYSICS.md, and the profile's PROFILE.md).
 * Its time is device time; whoever holds it decides how fast that runs.
 */
import { sameAddress, type CharacteristicAddress } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import { CONTROL_ATT_ERRORS, decodeControl, type ControlCommand } from "../profile/control.js";
import { CONTROL, SWEEP } from "../profile/uuids.js";
import type { Plate } from "./dishes.js";
import { statusOf, valueNow } from "./gattValues.js";
import type { Notification } from "./notification.js";
import { createVirtualSniffer, type VirtualSniffer, type VirtualSnifferOptions } from "./snifferState.js";
import { stepTick, TICK_MS } from "./tick.js";

export { createVirtualSniffer };
export type { Notification, VirtualSniffer, VirtualSnifferOptions };

/** ATT errors of the standard. @see Bluetooth Core, Vol 3 Part F, 3.4.1.1 (values from memory) */
const WRITE_NOT_PERMITTED = 0x03;
const ATTRIBUTE_NOT_FOUND = 0x0a;
/** How long a purge takes. Invented for the model. */
export const PURGE_MS = 20_000;

export interface Advanced {
  readonly sniffer: VirtualSniffer;
  readonly notifications: readonly Notification[];
}

/**
 * Lets device time pass. Cutting a span in two gives the same bytes as one piece.
 *
 * @param byMs - how long, in milliseconds, >= 0
 * @returns the sniffer afterwards and what arrived from it meanwhile, in order
 * @throws {RangeError} if the span is negative or not finite
 */
export function advance(sniffer: VirtualSniffer, byMs: number): Advanced {
  if (!(byMs >= 0 && Number.isFinite(byMs))) throw new RangeError(`time span: ${byMs}`);
  const untilMs = sniffer.elapsedMs + byMs;
  const notifications: Notification[] = [];
  let now = sniffer;
  const firstTick = Math.floor(sniffer.elapsedMs / TICK_MS) + 1;
  for (let tick = firstTick; tick * TICK_MS <= untilMs; tick += 1) {
    const step = stepTick(now, tick);
    now = step.sniffer;
    notifications.push(...step.notifications);
  }
  return { sniffer: { ...now, elapsedMs: untilMs }, notifications };
}

/** The value of a characteristic now; "refused" where it exists and cannot be read. */
export function readValue(
  sniffer: VirtualSniffer,
  address: CharacteristicAddress,
): Result<Uint8Array, "absent" | "refused"> {
  const bytes = valueNow(sniffer, address);
  if (bytes !== undefined) return ok(bytes);
  return err(isUnreadable(address) ? "refused" : "absent");
}

/**
 * A write with response.
 *
 * @returns the sniffer afterwards, and the ATT error it answers with: 0 where the write was taken
 */
export function writeValue(
  sniffer: VirtualSniffer,
  address: CharacteristicAddress,
  bytes: Uint8Array,
): { readonly sniffer: VirtualSniffer; readonly attError: number } {
  if (!sameAddress(address, CONTROL)) {
    const known = isUnreadable(address) || valueNow(sniffer, address) !== undefined;
    return { sniffer, attError: known ? WRITE_NOT_PERMITTED : ATTRIBUTE_NOT_FOUND };
  }
  const command = decodeControl(bytes);
  if (!command.ok) return { sniffer, attError: CONTROL_ATT_ERRORS[command.error.kind] };
  if (!isReadyFor(sniffer, command.value)) return { sniffer, attError: CONTROL_ATT_ERRORS.notReady };
  return { sniffer: obey(sniffer, command.value), attError: 0 };
}

/** Puts a plate under the sniffer, or takes it away (null): clean air again, or as clean as the room's. */
export function serve(sniffer: VirtualSniffer, plate: Plate | null): VirtualSniffer {
  return { ...sniffer, served: plate === null ? null : { plate, atMs: sniffer.elapsedMs } };
}

const isUnreadable = (address: CharacteristicAddress): boolean =>
  sameAddress(address, CONTROL) || sameAddress(address, SWEEP);

/** It starts while warming too, for STATUS says how cold it is; never while purging or with a failed heater. */
function isReadyFor(sniffer: VirtualSniffer, command: ControlCommand): boolean {
  if (command.kind === "stop") return true;
  const { state } = statusOf(sniffer);
  const allowed = command.kind === "start" ? ["warming", "ready", "measuring"] : ["ready", "measuring"];
  return allowed.includes(state);
}

function obey(sniffer: VirtualSniffer, command: ControlCommand): VirtualSniffer {
  const { elapsedMs, setup } = sniffer;
  switch (command.kind) {
    case "stop":
      return { ...sniffer, activity: { kind: "idle" } };
    case "purge":
      return { ...sniffer, activity: { kind: "purging", endsAtMs: elapsedMs + PURGE_MS } };
    case "start":
      return {
        ...sniffer,
        run: command.run,
        activity: {
          kind: "measuring",
          counter: 0,
          sweepStartMs: elapsedMs,
          ohm: setup.layout.channels.map(() => null),
        },
      };
  }
}
