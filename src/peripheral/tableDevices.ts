/** Holds a channel table against the machine: every device and attribute it names must be there. */
import { err, ok, type Result } from "../kernel/result.js";
import type { AttributeWrite, ChannelTable, QuantityName, TableFault } from "./channelTable.js";
import { findDevice, type IioDevice } from "./iioDevices.js";
import { findQuantity, type Quantity } from "./iioQuantity.js";
import type { Sysfs } from "./sysfs.js";

/** Where each name of a table leads. */
export interface TableDevices {
  quantity(name: QuantityName): { readonly folder: string; readonly quantity: Quantity };
  path(write: AttributeWrite): string;
}

interface Named {
  readonly field: string;
  readonly device: string | null;
  readonly has: (device: IioDevice) => boolean;
  readonly what: string;
}

/**
 * @param main - the device of the command line, which a name without a device means
 * @returns or the first name that leads nowhere
 */
export async function findTableDevices(
  sysfs: Sysfs,
  main: IioDevice,
  table: ChannelTable,
): Promise<Result<TableDevices, TableFault>> {
  const devices = new Map<string | null, IioDevice>([[null, main]]);
  for (const { field, device, has, what } of namesOf(table)) {
    let found = devices.get(device);
    if (found === undefined && device !== null) {
      const other = await findDevice(sysfs, device);
      if (!other.ok) {
        const there = other.error.length === 0 ? "none" : other.error.join(", ");
        return err({ field, cause: `names a device that is not there: ${device} (there is: ${there})` });
      }
      found = other.value;
      devices.set(device, found);
    }
    if (found === undefined || !has(found)) {
      return err({ field, cause: `names ${what}, which the device does not have` });
    }
  }
  const deviceOf = (device: string | null): IioDevice => {
    const found = devices.get(device);
    if (found === undefined) throw new RangeError(`a device no table named: ${device}`);
    return found;
  };
  return ok({
    quantity: ({ device, channel }) => {
      const { folder, attributes } = deviceOf(device);
      const quantity = findQuantity(attributes, channel);
      if (quantity === undefined) throw new RangeError(`a reading no table named: ${channel}`);
      return { folder, quantity };
    },
    path: ({ device, attribute }) => `${deviceOf(device).folder}/${attribute}`,
  });
}

function namesOf(table: ChannelTable): Named[] {
  return [
    ...table.channels.flatMap(({ resistor, heater }, place) => [
      ...(resistor.kind === "resistance"
        ? [reading(`channels.${place}.resistance`, resistor.name)]
        : [
            reading(`channels.${place}.divider.voltage`, resistor.voltage),
            ...("channel" in resistor.supply
              ? [reading(`channels.${place}.divider.supply`, resistor.supply)]
              : []),
          ]),
      ...heater.map((write, i) => setting(`channels.${place}.heater.${i}`, write)),
    ]),
    ...(["temperature", "humidity", "pressure"] as const).flatMap((key) => {
      const name = table.air[key];
      return name === null ? [] : [reading(`air.${key}`, name)];
    }),
    ...table.purge.heater.map((write, i) => setting(`purge.heater.${i}`, write)),
    ...table.off.map((write, i) => setting(`off.${i}`, write)),
  ];
}

const reading = (field: string, { device, channel }: QuantityName): Named => ({
  field,
  device,
  what: `${channel}_raw or ${channel}_input`,
  has: ({ attributes }) => findQuantity(attributes, channel) !== undefined,
});

const setting = (field: string, { device, attribute }: AttributeWrite): Named => ({
  field,
  device,
  what: attribute,
  has: ({ attributes }) => attributes.includes(attribute),
});
