/** Faults of the virtual sniffer, as the command line names them: for practice with what goes wrong. */
import { err, ok, type Result } from "../kernel/result.js";
import type { Faults } from "../virtual/faults.js";
import { DEMO_LAYOUT } from "../virtual/snifferState.js";
import { LAST_UNIT } from "../virtual/virtualSnifferId.js";

const SECOND_MS = 1000;
/** What a stuck channel shows; a value that a sound one could have. */
const STUCK_OHM = 100_000;

interface Kind {
  /** For the help: what the number is. */
  readonly means: string;
  readonly suits: (value: number) => boolean;
  readonly fault: (value: number) => Partial<Faults>;
}

const isShare = (value: number) => value > 0 && value <= 1;
const isTime = (value: number) => value >= 0;

export const FAULT_KINDS: Readonly<Record<string, Kind>> = {
  lost: {
    means: "share of notifications that never come, such as 0.1",
    suits: isShare,
    fault: (lostFraction) => ({ lostFraction }),
  },
  garbled: {
    means: "share of notifications with a wrong octet",
    suits: isShare,
    fault: (garbledFraction) => ({ garbledFraction }),
  },
  stuck: {
    means: "number of the channel that stands still, from 1",
    suits: (value) => Number.isSafeInteger(value) && value >= 1 && value <= DEMO_LAYOUT.channels.length,
    fault: (number) => ({ stuckChannel: { channel: number - 1, ohm: STUCK_OHM } }),
  },
  poisoned: {
    means: "share of the sensitivity's logarithm lost on each day of --age",
    suits: isShare,
    fault: (sensitivityLossPerDay) => ({ sensitivityLossPerDay }),
  },
  steam: {
    means: "times the steam of an ordinary plate; 8 wets the sniffer",
    suits: (value) => value > 0,
    fault: (steamFactor) => ({ steamFactor }),
  },
  reboot: {
    means: "seconds after which it loses power for a moment",
    suits: isTime,
    fault: (seconds) => ({ rebootAtMs: seconds * SECOND_MS }),
  },
  heater: {
    means: "seconds after which a heater fails",
    suits: isTime,
    fault: (seconds) => ({ heaterFailsAtMs: seconds * SECOND_MS }),
  },
  spread: {
    means: "number of another unit off the line, from 2: no two are alike",
    suits: (value) => Number.isSafeInteger(value) && value >= 2 && value <= LAST_UNIT,
    fault: (unitNumber) => ({ unitNumber }),
  },
};

/**
 * @param given - each `KIND=NUMBER`; of one kind the last counts
 * @returns all of them together, or what is wrong with the first that is none
 */
export function parseFaults(given: readonly string[]): Result<Partial<Faults>, string> {
  let faults: Partial<Faults> = {};
  for (const text of given) {
    const [name = "", number = ""] = text.split("=");
    const kind = Object.hasOwn(FAULT_KINDS, name) ? FAULT_KINDS[name] : undefined;
    if (kind === undefined)
      return err(`--fault knows no "${name}"; it knows ${Object.keys(FAULT_KINDS).join(", ")}.`);
    const value = number.trim() === "" ? Number.NaN : Number(number);
    if (!Number.isFinite(value) || !kind.suits(value))
      return err(`--fault ${name}= takes the ${kind.means}.`);
    faults = { ...faults, ...kind.fault(value) };
  }
  return ok(faults);
}
