import {
  HIGHEST_OHM,
  LOWEST_OHM,
  USUAL_PURGE_MS,
  USUAL_SWEEP_PERIOD_MS,
  USUAL_WARM_UP_MS,
  type ChannelTable,
  type QuantityName,
} from "./channelTable.js";
import { findQuantity } from "./iioQuantity.js";

/**
 * The channel table of a device nobody wrote one for: each resistance it has is a sensor of its own, its heater
 * left to the driver, and its air readings are the air.
 *
 * @param attributes - names in the device's folder
 * @returns a table whose channels may be none
 */
export function plainTable(attributes: readonly string[]): ChannelTable {
  const named = (channel: string): QuantityName => ({ device: null, channel });
  const had = (channel: string) => (findQuantity(attributes, channel) === undefined ? null : named(channel));
  const numbers = attributes.flatMap((name) => {
    const match = /^in_resistance(\d*)_(?:raw|input)$/.exec(name);
    return match === null ? [] : [match[1] ?? ""];
  });
  const inOrder = [...new Set(numbers)].sort((left, right) => Number(left) - Number(right));
  return {
    sweepPeriodMs: USUAL_SWEEP_PERIOD_MS,
    warmUpMs: USUAL_WARM_UP_MS,
    channels: inOrder.map((number, sensor) => ({
      sensor,
      heaterC: null,
      dwellMs: null,
      resistor: { kind: "resistance", name: named(`in_resistance${number}`) },
      heater: [],
    })),
    air: { temperature: had("in_temp"), humidity: had("in_humidityrelative"), pressure: had("in_pressure") },
    purge: { forMs: USUAL_PURGE_MS, heater: [] },
    off: [],
    range: { lowestOhm: LOWEST_OHM, highestOhm: HIGHEST_OHM },
  };
}
