/** Faults on a running virtual sniffer, as strong as it takes to meet them within one check. */
import type { PracticeFault } from "../kernel/practiceFault.js";
import { NO_FAULTS, type Faults } from "./faults.js";
import { createVirtualSniffer, type VirtualSniffer } from "./snifferState.js";

/** One notification in five: a whole sweep is several of them. */
const BAD_RADIO = 0.2;
/** The third channel stands still, at a value that a sound one could have. */
const STUCK = { channel: 2, ohm: 100_000 };
/** Times the steam of an ordinary plate: more wets the sniffer whatever the dish. */
const MUCH_STEAM = 12;
/** The unit that stands in for a second sniffer. */
export const SECOND_UNIT = 2;
/** Share of the sensitivity's logarithm that a poisoned film loses with each sniff. */
const LOSS_PER_SNIFF = 0.1;
/** What happens in mid-sniff happens so long after the plate was put down: some of it is recorded by then. */
export const MISHAP_AFTER_MS = 16_000;

/**
 * The sniffer with exactly these faults from now on; films that are poisoned no longer are as they were made.
 * Which unit it is was settled then too.
 */
export function withPractice(sniffer: VirtualSniffer, chosen: readonly PracticeFault[]): VirtualSniffer {
  const has = (fault: PracticeFault) => chosen.includes(fault);
  const { unitNumber, rebootAtMs, heaterFailsAtMs } = sniffer.setup.faults;
  const faults: Faults = {
    ...NO_FAULTS,
    unitNumber,
    lostFraction: has("lost") ? BAD_RADIO : 0,
    garbledFraction: has("garbled") ? BAD_RADIO : 0,
    stuckChannel: has("stuck") ? STUCK : null,
    steamFactor: has("steam") ? MUCH_STEAM : 1,
    rebootAtMs: has("reboot") ? rebootAtMs : null,
    heaterFailsAtMs: has("heater") ? heaterFailsAtMs : null,
  };
  const setup = { ...sniffer.setup, faults };
  return { ...sniffer, setup, age: has("poisoned") ? sniffer.age : createVirtualSniffer(setup).age };
}

/**
 * A plate is put down: what happens in mid-sniff is on its way, and poison takes its share. A heater that failed
 * already stays so.
 */
export function beginMishaps(sniffer: VirtualSniffer, chosen: readonly PracticeFault[]): VirtualSniffer {
  const atMs = sniffer.elapsedMs + MISHAP_AFTER_MS;
  const { setup, age } = sniffer;
  const rebootAtMs = chosen.includes("reboot") ? atMs : null;
  const heaterFailsAtMs = chosen.includes("heater") ? (setup.faults.heaterFailsAtMs ?? atMs) : null;
  const left = age.sensitivityLeft * (chosen.includes("poisoned") ? Math.exp(-LOSS_PER_SNIFF) : 1);
  return {
    ...sniffer,
    setup: { ...setup, faults: { ...setup.faults, rebootAtMs, heaterFailsAtMs } },
    age: { ...age, sensitivityLeft: left },
  };
}
