import type { SniffPhase } from "../sniff/sniff.js";

/** How the log ratios of one sniffer become those of another with the same channels: `first = matrix second + offset`. */
export interface SnifferMap {
  /** Row-major, one row a channel of the first sniffer, shape [channels, channels]. */
  readonly matrix: Float32Array;
  /** Natural log units, shape [channels]. */
  readonly offset: Float32Array;
}

/**
 * Sweeps of the second sniffer as the first would have shown them, against a reference of nought.
 *
 * @param phase - channels in the order of the features
 * @param reference - natural log of the resistance that the levels are set against, shape [channels]
 * @returns resistances whose logarithm is the mapped log ratio
 * @throws {RangeError} if the channels do not fit the map
 */
export function mapPhase(map: SnifferMap, phase: SniffPhase, reference: Float64Array): SniffPhase {
  const channels = map.offset.length;
  if (map.matrix.length !== channels ** 2 || reference.length !== channels)
    throw new RangeError(`a map of ${channels} channels does not fit ${reference.length}`);
  const ohm = phase.ohm.map((sweep) => {
    const ratios = sweep.map((value, channel) => Math.log(value) - reference[channel]!);
    return Array.from(map.offset, (start, to) => {
      let sum = start;
      for (let from = 0; from < channels; from += 1) sum += map.matrix[to * channels + from]! * ratios[from]!;
      return Math.exp(sum);
    });
  });
  return { atMs: phase.atMs, ohm };
}
