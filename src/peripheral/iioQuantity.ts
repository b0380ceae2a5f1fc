/**
 * One reading of the kernel's Industrial I/O, in its own unit.
 *
 * @see Linux, Documentation/ABI/testing/sysfs-bus-iio: `<type>[Y]_input` is a scaled value;
 *   else (`_raw` + `_offset`) x `_scale`, where a name without the channel's number or modifier is shared by all
 *   channels of a type, and a missing offset is 0. Units: temperature in milli degrees Celsius, relative humidity in
 *   milli per cent, pressure in kilopascal, voltage in millivolts. Resistance in ohm: IIO_RESISTANCE in the kernel's
 *   list of channel types.
 */
import { err, ok, type Result } from "../kernel/result.js";
import type { Sysfs, SysfsFault } from "./sysfs.js";

/** The attributes that make up a reading. */
export type Quantity =
  | { readonly kind: "scaled"; readonly input: string }
  | {
      readonly kind: "raw";
      readonly raw: string;
      readonly offset: string | null;
      readonly scale: string | null;
    };

/** What each kind of reading is multiplied by to give the profile's unit. */
export const DEGREES_PER_UNIT = 1 / 1000;
export const PER_CENT_PER_UNIT = 1 / 1000;
export const PASCAL_PER_UNIT = 1000;

/**
 * Finds a reading among a device's attributes.
 *
 * @param channel - such as "in_temp" or "in_resistance0"
 * @returns undefined where the device does not have it
 */
export function findQuantity(attributes: readonly string[], channel: string): Quantity | undefined {
  const present = new Set(attributes);
  if (present.has(`${channel}_input`)) return { kind: "scaled", input: `${channel}_input` };
  if (!present.has(`${channel}_raw`)) return undefined;
  const withoutNumber = channel.replaceAll(/\d+/g, "");
  const type = /^in_[a-z]+/.exec(channel)?.[0] ?? channel;
  const shared = (suffix: string) =>
    [channel, withoutNumber, type].map((name) => `${name}_${suffix}`).find((name) => present.has(name)) ??
    null;
  return { kind: "raw", raw: `${channel}_raw`, offset: shared("offset"), scale: shared("scale") };
}

/**
 * Reads a quantity.
 *
 * @param folder - the device's folder below the root of sysfs
 * @returns in the unit the kernel documents for its type; a text that is no number is a fault
 */
export async function readQuantity(
  sysfs: Sysfs,
  folder: string,
  quantity: Quantity,
): Promise<Result<number, SysfsFault>> {
  const number = async (attribute: string | null, otherwise: number): Promise<Result<number, SysfsFault>> => {
    if (attribute === null) return ok(otherwise);
    const path = `${folder}/${attribute}`;
    const text = await sysfs.read(path);
    if (!text.ok) return text;
    const value = parseNumber(text.value);
    return value === undefined
      ? err({ kind: "failed", path, detail: `not a number: ${text.value}` })
      : ok(value);
  };
  if (quantity.kind === "scaled") return number(quantity.input, 0);
  const raw = await number(quantity.raw, 0);
  if (!raw.ok) return raw;
  const offset = await number(quantity.offset, 0);
  if (!offset.ok) return offset;
  const scale = await number(quantity.scale, 1);
  return scale.ok ? ok((raw.value + offset.value) * scale.value) : scale;
}

/** Decimal notation as the kernel prints it; anything else is no number. */
function parseNumber(text: string): number | undefined {
  return /^[+-]?\d+(\.\d+)?$/.test(text) ? Number(text) : undefined;
}
