/** A channel table put to work on the kernel's attributes: reads resistances and air, sets heaters. */
import type { AirReading } from "../kernel/air.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { AttributeWrite, ChannelTable, QuantityName, Resistor } from "./channelTable.js";
import { dividerOhm } from "./dividerOhm.js";
import { findDevice } from "./iioDevices.js";
import { DEGREES_PER_UNIT, PASCAL_PER_UNIT, PER_CENT_PER_UNIT, readQuantity } from "./iioQuantity.js";
import { plainTable } from "./plainTable.js";
import type { Problem } from "./problem.js";
import type { Sysfs, SysfsFault } from "./sysfs.js";
import { findTableDevices, type TableDevices } from "./tableDevices.js";

export interface IioReader {
  readonly table: ChannelTable;
  /** In ohm; null where this channel cannot be measured now. A fault: the device does not answer any more. */
  readChannel(place: number): Promise<Result<number | null, SysfsFault>>;
  /** What is not known at the moment is missing. */
  readAir(): Promise<AirReading>;
  /** Sets attributes in order; stops at the first that cannot be set. */
  set(writes: readonly AttributeWrite[]): Promise<Result<void, SysfsFault>>;
}

/** A wet sensor reads a little above saturation, a dry one a little below nothing (common practice). */
const HUMIDITY_OVERSHOOT_PCT = 10;

/**
 * Finds everything that a table names, switches its heaters off, and reads each channel once.
 *
 * @param device - as after `iio:` on the command line
 * @param given - the channel table and the name of its file; null: the device speaks for itself
 */
export async function openIio(
  sysfs: Sysfs,
  device: string,
  given: { readonly table: ChannelTable; readonly file: string } | null,
): Promise<Result<IioReader, Problem>> {
  const main = await findDevice(sysfs, device);
  if (!main.ok) return err({ kind: "noSensor", wanted: device, present: main.error });
  const { attributes } = main.value;
  const table = given?.table ?? plainTable(attributes);
  if (table.channels.length === 0) {
    const readings = attributes.filter((name) => /^in_.*_(raw|input)$/.test(name));
    return err({ kind: "noResistance", device, attributes: readings });
  }
  const devices = await findTableDevices(sysfs, main.value, table);
  if (!devices.ok) return err({ kind: "badTable", file: given?.file ?? "", ...devices.error });
  return tried(readerOf(sysfs, table, devices.value));
}

async function tried(reader: IioReader): Promise<Result<IioReader, Problem>> {
  const off = await reader.set(reader.table.off);
  if (!off.ok) return err(problemOf(off.error));
  for (const place of reader.table.channels.keys()) {
    const read = await reader.readChannel(place);
    if (!read.ok) return err(problemOf(read.error));
  }
  return ok(reader);
}

function problemOf({ kind, path, detail }: SysfsFault): Problem {
  return kind === "denied"
    ? { kind: "notPermitted", what: path, detail }
    : { kind: "noReading", path, detail };
}

function readerOf(sysfs: Sysfs, table: ChannelTable, devices: TableDevices): IioReader {
  const quantityOf = (name: QuantityName) => {
    const { folder, quantity } = devices.quantity(name);
    return readQuantity(sysfs, folder, quantity);
  };
  const airValue = async (name: QuantityName | null): Promise<number | undefined> => {
    if (name === null) return undefined;
    const value = await quantityOf(name);
    return value.ok ? value.value : undefined;
  };
  return {
    table,
    readChannel: async (place) => {
      const channel = table.channels[place];
      if (channel === undefined) throw new RangeError(`no channel ${place}`);
      const ohm = await readResistor(channel.resistor, quantityOf);
      if (ohm.ok) return ok(withinRange(ohm.value, table.range) ? ohm.value : null);
      return ["busy", "failed"].includes(ohm.error.kind) ? ok(null) : ohm;
    },
    readAir: async () =>
      plausibleAir(
        await airValue(table.air.temperature),
        await airValue(table.air.humidity),
        await airValue(table.air.pressure),
      ),
    set: async (writes) => {
      for (const write of writes) {
        const done = await sysfs.write(devices.path(write), write.value);
        if (!done.ok) return done;
      }
      return ok(undefined);
    },
  };
}

async function readResistor(
  resistor: Resistor,
  read: (name: QuantityName) => Promise<Result<number, SysfsFault>>,
): Promise<Result<number, SysfsFault>> {
  if (resistor.kind === "resistance") return read(resistor.name);
  const joint = await read(resistor.voltage);
  if (!joint.ok) return joint;
  const supply = "millivolt" in resistor.supply ? ok(resistor.supply.millivolt) : await read(resistor.supply);
  if (!supply.ok) return supply;
  return ok(dividerOhm(joint.value, supply.value, resistor.loadOhm, resistor.atSupply));
}

function withinRange(ohm: number, { lowestOhm, highestOhm }: ChannelTable["range"]): boolean {
  return ohm >= lowestOhm && ohm <= highestOhm;
}

/** In the profile's units, each value within what the profile can say. */
function plausibleAir(
  milliC: number | undefined,
  milliPct: number | undefined,
  kilopascal: number | undefined,
): AirReading {
  const temperatureC = (milliC ?? Number.NaN) * DEGREES_PER_UNIT;
  const humidityPct = (milliPct ?? Number.NaN) * PER_CENT_PER_UNIT;
  const pressurePa = (kilopascal ?? Number.NaN) * PASCAL_PER_UNIT;
  const dampest = 100 + HUMIDITY_OVERSHOOT_PCT;
  return {
    ...(temperatureC >= -273.15 && temperatureC <= 327.67 ? { temperatureC } : {}),
    ...(humidityPct >= -HUMIDITY_OVERSHOOT_PCT && humidityPct <= dampest
      ? { humidityPct: Math.min(100, Math.max(0, humidityPct)) }
      : {}),
    ...(pressurePa > 0 && pressurePa <= 0xffffffff / 10 ? { pressurePa } : {}),
  };
}
