/** One resistance that a sniffer reports: a sensor at one heater step. */
export interface Channel {
  /** Which gas sensor, counted from 0. */
  readonly sensor: number;
  /** Heater temperature of the step, in degrees Celsius; null where unheated or unspecified. */
  readonly heaterC: number | null;
  /** How long the step is held before the resistance is read; null where unspecified. */
  readonly dwellMs: number | null;
}

/** Do two channel tables describe the same measurement, in the same order? */
export function sameChannels(left: readonly Channel[], right: readonly Channel[]): boolean {
  return (
    left.length === right.length &&
    left.every((channel, i) => {
      const other = right[i];
      return (
        other !== undefined &&
        channel.sensor === other.sensor &&
        channel.heaterC === other.heaterC &&
        channel.dwellMs === other.dwellMs
      );
    })
  );
}
