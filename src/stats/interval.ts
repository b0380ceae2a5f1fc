/** A closed interval on the number line, `low <= high`. Both ends carry the unit of what was measured. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}
