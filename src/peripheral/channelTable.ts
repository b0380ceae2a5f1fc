/** The channel table: which attribute of the kernel is which sensor, and how its heater steps. A JSON file. */
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import { MOST_CHANNELS } from "../profile/layout.js";

/** A reading of the kernel's Industrial I/O: `channel` is the attribute's name without `_raw` or `_input`. */
export interface QuantityName {
  /** Which device, as after `iio:` on the command line; null: the one named there. */
  readonly device: string | null;
  readonly channel: string;
}

/** One write to an attribute: a heater set to a step, or switched off. */
export interface AttributeWrite {
  readonly device: string | null;
  readonly attribute: string;
  readonly value: string;
}

/** Where a channel's resistance comes from. */
export type Resistor =
  | { readonly kind: "resistance"; readonly name: QuantityName }
  /** A sensor in series with a known resistor, between a supply and ground, and the voltage at their joint. */
  | {
      readonly kind: "divider";
      readonly voltage: QuantityName;
      readonly supply: QuantityName | { readonly millivolt: number };
      readonly loadOhm: number;
      /** Which of the two sits at the supply. */
      readonly atSupply: "sensor" | "load";
    };

export interface TableChannel {
  readonly sensor: number;
  readonly heaterC: number | null;
  readonly dwellMs: number | null;
  readonly resistor: Resistor;
  /** What sets the heater to this step; empty where it cannot be set. */
  readonly heater: readonly AttributeWrite[];
}

export interface ChannelTable {
  readonly sweepPeriodMs: number;
  readonly warmUpMs: number;
  readonly channels: readonly TableChannel[];
  readonly air: {
    readonly temperature: QuantityName | null;
    readonly humidity: QuantityName | null;
    readonly pressure: QuantityName | null;
  };
  readonly purge: { readonly forMs: number; readonly heater: readonly AttributeWrite[] };
  /** What switches every heater off. */
  readonly off: readonly AttributeWrite[];
  /** Outside these a resistance counts as not measured: a broken wire, or a stuck converter. */
  readonly range: { readonly lowestOhm: number; readonly highestOhm: number };
}

/** What to look at in the file. */
export interface TableFault {
  /** Dotted path, or "" for the whole file. */
  readonly field: string;
  readonly cause: string;
}

/** Common practice: a metal-oxide film settles in minutes. */
export const USUAL_WARM_UP_MS = 180_000;
export const USUAL_SWEEP_PERIOD_MS = 1000;
export const USUAL_PURGE_MS = 20_000;
/** Below a short circuit's, above any film's: only what is no resistance falls outside. */
export const LOWEST_OHM = 1;
export const HIGHEST_OHM = 1e12;

const MOST_MS = 0xffffffff;
/** 0xffff stands for "unspecified" in LAYOUT. */
const MOST_DWELL_MS = 0xfffe;

const whole = (lowest: number, highest: number) =>
  v.pipe(
    v.number("must be a number"),
    v.integer("must be whole"),
    v.minValue(lowest, `must be ${lowest} or more`),
    v.maxValue(highest, `must be ${highest} or less`),
  );
const positive = v.pipe(
  v.number("must be a number"),
  v.finite("must be finite"),
  v.gtValue(0, "must be more than 0"),
);
/** A name inside a device's folder and nowhere else. */
const fileName = v.pipe(
  v.string("must be text"),
  v.regex(/^[A-Za-z][A-Za-z0-9_.+-]*$/, "must be the plain name of an attribute"),
);
const deviceName = v.pipe(v.string("must be text"), v.nonEmpty("must not be empty"));

/** @see Linux, Documentation/ABI/testing/sysfs-bus-iio: in_<type>[Y][_modifier], Y the channel's number */
const quantity = (type: string) => {
  const name = v.pipe(
    v.string("must be text"),
    v.regex(
      new RegExp(`^in_${type}\\d*(_[a-z0-9]+)*$`),
      `must be a name such as in_${type}0, without _raw or _input`,
    ),
    v.check((text) => !/_(raw|input|scale|offset)$/.test(text), "must be named without _raw or _input"),
  );
  return v.union(
    [
      v.pipe(
        name,
        v.transform((channel): QuantityName => ({ device: null, channel })),
      ),
      v.strictObject({ device: deviceName, channel: name }),
    ],
    (issue) => issue.issues?.[0]?.message ?? issue.message,
  );
};

const write = v.pipe(
  v.strictObject({
    device: v.optional(deviceName),
    attribute: fileName,
    value: v.pipe(v.string("must be text, in quotes"), v.regex(/^[^\n]{1,100}$/, "must be one short line")),
  }),
  v.transform(({ device, ...rest }): AttributeWrite => ({ device: device ?? null, ...rest })),
);
const writes = v.optional(v.array(write, "must be a list"), []);

const divider = v.pipe(
  v.strictObject({
    voltage: quantity("voltage"),
    supply: v.union(
      [v.strictObject({ millivolt: positive }), quantity("voltage")],
      "must be a voltage channel or a number of millivolts",
    ),
    loadOhm: positive,
    atSupply: v.picklist(["sensor", "load"], 'must be "sensor" or "load"'),
  }),
  v.transform((fields): Resistor => ({ kind: "divider", ...fields })),
);

const channel = v.pipe(
  v.strictObject({
    sensor: whole(0, 255),
    heaterC: v.optional(v.nullable(whole(-273, 0x7fff)), null),
    dwellMs: v.optional(v.nullable(whole(0, MOST_DWELL_MS)), null),
    resistance: v.optional(quantity("resistance")),
    divider: v.optional(divider),
    heater: writes,
  }),
  v.check(
    (fields) => (fields.resistance === undefined) !== (fields.divider === undefined),
    "needs either resistance or divider",
  ),
  v.transform(({ resistance, divider: divided, ...rest }): TableChannel => ({
    ...rest,
    resistor: resistorOf(resistance, divided),
  })),
);

function resistorOf(resistance: QuantityName | undefined, divided: Resistor | undefined): Resistor {
  if (divided !== undefined) return divided;
  if (resistance === undefined) throw new RangeError("a channel without a resistor");
  return { kind: "resistance", name: resistance };
}

const air = v.strictObject({
  temperature: v.optional(v.nullable(quantity("temp")), null),
  humidity: v.optional(v.nullable(quantity("humidityrelative")), null),
  pressure: v.optional(v.nullable(quantity("pressure")), null),
});

const tableSchema = v.pipe(
  v.strictObject({
    format: v.literal("nidor-channels/1", 'must be "nidor-channels/1"'),
    sweepPeriodMs: v.optional(whole(1, MOST_MS), USUAL_SWEEP_PERIOD_MS),
    warmUpMs: v.optional(whole(0, MOST_MS), USUAL_WARM_UP_MS),
    channels: v.pipe(
      v.array(channel, "must be a list"),
      v.nonEmpty("needs at least one channel"),
      v.maxLength(MOST_CHANNELS, `holds at most ${MOST_CHANNELS} channels`),
    ),
    air: v.optional(air, {}),
    purge: v.optional(
      v.strictObject({ forMs: v.optional(whole(0, MOST_MS), USUAL_PURGE_MS), heater: writes }),
      {},
    ),
    off: writes,
    range: v.optional(
      v.strictObject({
        lowestOhm: v.optional(positive, LOWEST_OHM),
        highestOhm: v.optional(positive, HIGHEST_OHM),
      }),
      {},
    ),
  }),
  v.transform(({ format: _format, ...table }): ChannelTable => table),
);

/** Reads a channel table. The first fault found is returned. Never throws. */
export function parseChannelTable(fileText: string): Result<ChannelTable, TableFault> {
  let value: unknown;
  try {
    value = JSON.parse(fileText);
  } catch (cause) {
    return err({
      field: "",
      cause: `is not JSON (${cause instanceof Error ? cause.message : String(cause)})`,
    });
  }
  const checked = v.safeParse(tableSchema, value, { abortEarly: true });
  if (!checked.success) {
    const issue = checked.issues[0];
    return err({ field: v.getDotPath(issue) ?? "", cause: issue.message });
  }
  return checkedTogether(checked.output);
}

function checkedTogether(table: ChannelTable): Result<ChannelTable, TableFault> {
  const { range, channels, sweepPeriodMs, off, purge } = table;
  if (range.lowestOhm >= range.highestOhm) {
    return err({ field: "range", cause: "lowestOhm must be below highestOhm" });
  }
  for (const sensor of new Set(channels.map((entry) => entry.sensor))) {
    const steps = channels.filter((entry) => entry.sensor === sensor);
    const dwellMs = steps.reduce((sum, step) => sum + (step.dwellMs ?? 0), 0);
    if (dwellMs > sweepPeriodMs) {
      const cause = `the steps of sensor ${sensor} take ${dwellMs} ms, longer than a sweep (${sweepPeriodMs} ms)`;
      return err({ field: "sweepPeriodMs", cause });
    }
  }
  const heated = [...channels.flatMap(({ heater }) => heater), ...purge.heater];
  const switchable = new Set(off.map(heaterKey));
  const left = heated.find((heater) => !switchable.has(heaterKey(heater)));
  if (left !== undefined) {
    return err({ field: "off", cause: `does not say how to switch ${left.attribute} off again` });
  }
  return ok(table);
}

const heaterKey = ({ device, attribute }: AttributeWrite): string => JSON.stringify([device, attribute]);
