import type { AirReading } from "../kernel/air.js";
import type { Channel } from "../kernel/channel.js";
import type { GroupTruths } from "../kernel/groups.js";

/** Sweeps of one phase, in time order. */
export interface SniffPhase {
  /** When each sweep ended, counted from the phase's first sweep; shape [sweeps]. */
  readonly atMs: readonly number[];
  /** Resistances, shape [sweeps][channels], all positive and finite. */
  readonly ohm: readonly (readonly number[])[];
}

/** What the recorder noticed and the numbers alone do not show. */
export const RECORDED_FLAGS = [
  "coldHeater", // the sniff began before the heater was warm
  "heaterFault", // the heater did not reach its steps
  "sweepsLost", // notifications were lost on the way
  "linkLost", // the radio link broke while sniffing
  "cleanAirUnsteady", // the baseline never settled
] as const;
export type RecordedFlag = (typeof RECORDED_FLAGS)[number];

/** One occasion: sweeps in clean air, then sweeps in the headspace of a plate. The sniff file's line. */
export interface Sniff {
  readonly format: "nidor-sniff/1";
  readonly id: string;
  /** ISO 8601 instant. */
  readonly takenAt: string;
  readonly sniffer: { readonly id: string; readonly channels: readonly Channel[] };
  readonly plate: string;
  readonly occasion: string;
  readonly dish: string;
  readonly groups: GroupTruths;
  readonly cleanAir?: SniffPhase | undefined;
  readonly headspace: SniffPhase;
  readonly air?:
    { readonly cleanAir?: AirReading | undefined; readonly headspace?: AirReading | undefined } | undefined;
  /** From the last clean-air sweep to the first headspace sweep; a missing value is taken as not stale. */
  readonly cleanAirAgeMs?: number | undefined;
  readonly flags?: readonly RecordedFlag[] | undefined;
}

/** The first part of a sniff: what was known `forMs` into the headspace. */
export function headspacePrefix(sniff: Sniff, forMs: number): Sniff {
  const kept = sniff.headspace.atMs.filter((atMs) => atMs <= forMs).length;
  const sweeps = Math.max(1, kept);
  return {
    ...sniff,
    headspace: {
      atMs: sniff.headspace.atMs.slice(0, sweeps),
      ohm: sniff.headspace.ohm.slice(0, sweeps),
    },
  };
}
