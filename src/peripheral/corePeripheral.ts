import { createCore, type CoreSetup, type PeripheralCore } from "./core.js";
import { writeValue } from "./coreCommand.js";
import { stepCore, type CoreEvent } from "./coreStep.js";
import { addressesOf, readValue } from "./coreValues.js";
import type { Clock, Peripheral, PeripheralNotification } from "./peripheral.js";

/** The half of a peripheral that is the same whatever it measures with; a source feeds it events. */
export interface CorePeripheral extends Omit<Peripheral, "start" | "stop"> {
  feed(event: CoreEvent): void;
  core(): PeripheralCore;
}

/** Holds the core between events, and stamps each with the clock. */
export function createCorePeripheral(setup: CoreSetup, clock: Clock): CorePeripheral {
  let core = createCore(setup);
  let listener: (notification: PeripheralNotification) => void = () => undefined;
  const feed = (event: CoreEvent): void => {
    const step = stepCore(core, clock.nowMs(), event);
    core = step.core;
    for (const notification of step.notifications) listener(notification);
  };
  return {
    addresses: addressesOf(setup.senses),
    read: (address) => {
      feed({ kind: "time" });
      return readValue(core, address);
    },
    write: (address, bytes) => {
      feed({ kind: "time" });
      const written = writeValue(core, address, bytes);
      core = written.core;
      feed({ kind: "time" });
      return written.attError;
    },
    onNotification: (next) => {
      listener = next;
    },
    feed,
    core: () => core,
  };
}
