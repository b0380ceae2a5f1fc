/** Things that go wrong with a sniffer, for practice and tests. */
export interface Faults {
  /** Chance that a notification never comes, a fraction. */
  readonly lostFraction: number;
  /** Chance that one octet of a notification comes wrong, a fraction. */
  readonly garbledFraction: number;
  /** A channel that shows one value whatever it meets; null ohm: it cannot be measured at all. */
  readonly stuckChannel: { readonly channel: number; readonly ohm: number | null } | null;
  /** Poisoned films: share of the logarithm of the sensitivity lost a day, >= 0. */
  readonly sensitivityLossPerDay: number;
  /** More steam than an ordinary plate gives: 1 is ordinary, 8 wets the sniffer. */
  readonly steamFactor: number;
  /** Loses power for a moment at this time since it was made, in milliseconds. */
  readonly rebootAtMs: number | null;
  /** A heater draws no current from this time since it was made on, in milliseconds: it can measure no more. */
  readonly heaterFailsAtMs: number | null;
  /** Which unit off the line it is, whole: 1 took the demo samples, and no two are alike. Only when it is made. */
  readonly unitNumber: number;
}

export const NO_FAULTS: Faults = {
  lostFraction: 0,
  garbledFraction: 0,
  stuckChannel: null,
  sensitivityLossPerDay: 0,
  steamFactor: 1,
  rebootAtMs: null,
  heaterFailsAtMs: null,
  unitNumber: 1,
};
