/** Takes the bytes of a virtual sniffer apart by the profile's own decoders, for tests. */
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import {
  assembleSweeps,
  beginSweeps,
  finishSweeps,
  type LinkFault,
} from "../../src/profile/assembleSweeps.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeStatus, type SnifferStatus } from "../../src/profile/status.js";
import type { Sweep } from "../../src/profile/sweepFrame.js";
import { CONTROL, STATUS, SWEEP } from "../../src/profile/uuids.js";
import { writeValue, type Notification, type VirtualSniffer } from "../../src/virtual/virtualSniffer.js";

export function bytesOf(
  notifications: readonly Notification[],
  { characteristic }: CharacteristicAddress,
): Uint8Array[] {
  return notifications
    .filter(({ address }) => address.characteristic === characteristic)
    .map(({ bytes }) => bytes);
}

export const framesIn = (notifications: readonly Notification[]) => bytesOf(notifications, SWEEP);

/** Every STATUS notification, decoded. Fails if one does not decode. */
export function statusIn(notifications: readonly Notification[]): SnifferStatus[] {
  return bytesOf(notifications, STATUS).map((bytes) => {
    const status = decodeStatus(bytes);
    if (!status.ok) throw new Error(`STATUS does not decode: ${status.error.kind}`);
    return status.value;
  });
}

export function assembled(notifications: readonly Notification[], run: number, channelCount = 8) {
  let state = beginSweeps(run, channelCount);
  const sweeps: Sweep[] = [];
  const faults: LinkFault[] = [];
  for (const bytes of framesIn(notifications)) {
    const step = assembleSweeps(state, bytes);
    state = step.state;
    sweeps.push(...step.sweeps);
    faults.push(...step.faults);
  }
  const end = finishSweeps(state);
  return { sweeps: [...sweeps, ...end.sweeps], faults: [...faults, ...end.faults] };
}

/** The sweeps of a run that came without any fault. Fails at a fault. */
export function sweepsIn(notifications: readonly Notification[], run: number, channelCount = 8): Sweep[] {
  const { sweeps, faults } = assembled(notifications, run, channelCount);
  if (faults.length > 0) throw new Error(`faults on the link: ${JSON.stringify(faults)}`);
  return sweeps;
}

/** The sniffer after a start command that it took. */
export function started(sniffer: VirtualSniffer, run: number): VirtualSniffer {
  const answer = writeValue(sniffer, CONTROL, encodeControl({ kind: "start", run }));
  if (answer.attError !== 0) throw new Error(`start refused: ${answer.attError}`);
  return answer.sniffer;
}
