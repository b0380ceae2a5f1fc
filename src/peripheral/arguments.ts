/** The command line of the sniffer: pure. */
import { parseArgs } from "node:util";
import { err, ok, type Result } from "../kernel/result.js";
import type { Faults } from "../virtual/faults.js";
import type { Problem } from "./problem.js";
import { FAULT_KINDS, parseFaults } from "./virtualFaults.js";

export type Source =
  | { readonly kind: "iio"; readonly device: string }
  | { readonly kind: "virtual" }
  | { readonly kind: "recording"; readonly file: string };

export interface Arguments {
  readonly source: Source;
  /** The channel table's file; null: the device speaks for itself. */
  readonly channels: string | null;
  readonly sysfs: string;
  /** Where identity and heated hours are kept; null: the usual place. */
  readonly state: string | null;
  readonly adapter: string | null;
  readonly name: string;
  /** Whole; for the virtual sniffer. */
  readonly seed: number;
  /** Days of use behind the virtual sniffer, whole. */
  readonly ageDays: number;
  /** What goes wrong with the virtual sniffer. */
  readonly faults: Partial<Faults>;
  /** Wait for BlueZ or an adapter instead of ending. */
  readonly wait: boolean;
}

export const HELP = `Serves a sniffer over Bluetooth Low Energy, through BlueZ.

  npm run sniffer -- --source SOURCE [options]

Sources
  iio:device0          a gas sensor at the kernel's Industrial I/O, here iio:device0;
                       instead of device0 its label or its name
  virtual              a sniffer that exists only as numbers. Type the name of a dish
                       and Enter to put a plate under it, Enter alone to take it away
  FILE                 a sniff file: each start command plays the next sniff

Options
  --channels FILE      which attribute is which sensor, and how its heater steps (BUILD.md)
  --adapter hci0       which Bluetooth adapter; otherwise the first that can and is on
  --name TEXT          what phones show; at most 29 octets
  --state FILE         where this sniffer's identity and heated hours are kept
  --wait               wait for BlueZ and an adapter instead of ending
  --seed NUMBER        for the virtual sniffer; the same seed, the same plates
  --age DAYS           for the virtual sniffer: days of use behind it; otherwise 0
  --fault KIND=NUMBER  for the virtual sniffer, as often as wanted: what goes wrong with it
${Object.entries(FAULT_KINDS)
  .map(([name, { means }]) => `                       ${`${name}=`.padEnd(10)}${means}`)
  .join("\n")}
  --sysfs FOLDER       where the kernel shows its devices; otherwise /sys
  --help               this

It can be wrong. It is no medical device, and it never shows that food is free of anything.
`;

/** An advertisement's scan response holds 31 octets, two of them for the name's length and type. */
export const MOST_NAME_OCTETS = 29;

/** @returns null where help was asked for */
export function parseArguments(given: readonly string[]): Result<Arguments | null, Problem> {
  try {
    const { values } = parseArgs({
      args: [...given],
      options: {
        source: { type: "string" },
        channels: { type: "string" },
        adapter: { type: "string" },
        name: { type: "string", default: "Nidor sniffer" },
        state: { type: "string" },
        wait: { type: "boolean", default: false },
        seed: { type: "string", default: "1" },
        age: { type: "string", default: "0" },
        fault: { type: "string", multiple: true, default: [] },
        sysfs: { type: "string", default: "/sys" },
        help: { type: "boolean", default: false },
      },
    });
    if (values.help) return ok(null);
    const source = sourceOf(values.source);
    if (typeof source === "string") return usage(source);
    const seed = Number(values.seed);
    if (!Number.isSafeInteger(seed)) return usage(`--seed is not a whole number: ${values.seed}`);
    const ageDays = Number(values.age);
    if (!Number.isSafeInteger(ageDays) || ageDays < 0)
      return usage(`--age is not a number of days: ${values.age}`);
    const faults = parseFaults(values.fault);
    if (!faults.ok) return usage(faults.error);
    if (source.kind !== "virtual" && (values.fault.length > 0 || ageDays > 0))
      return usage("--fault and --age go with --source virtual: a real sensor has its own.");
    const octets = new TextEncoder().encode(values.name).length;
    if (octets === 0 || octets > MOST_NAME_OCTETS) {
      return usage(`--name takes 1 to ${MOST_NAME_OCTETS} octets; this is ${octets}.`);
    }
    if (values.channels !== undefined && source.kind !== "iio") {
      return usage("--channels goes with a source that begins with iio:");
    }
    return ok({
      source,
      channels: values.channels ?? null,
      sysfs: values.sysfs,
      state: values.state ?? null,
      adapter: values.adapter ?? null,
      name: values.name,
      seed,
      ageDays,
      faults: faults.value,
      wait: values.wait,
    });
  } catch (cause) {
    return usage(cause instanceof Error ? cause.message : String(cause));
  }
}

/** @returns the source, or what is wrong with it */
function sourceOf(text: string | undefined): Source | string {
  if (text === undefined || text === "") return "--source is missing: what is there to measure with?";
  if (text === "virtual") return { kind: "virtual" };
  if (!text.startsWith("iio:")) return { kind: "recording", file: text };
  const device = text.slice("iio:".length);
  return device === "" ? "--source iio: names no device, such as iio:device0." : { kind: "iio", device };
}

const usage = (detail: string) => err({ kind: "usage", detail } as const);
