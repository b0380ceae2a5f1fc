/** Makes the peripheral that the command line asks for. Effects: reads files. */
import { createHash, randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { homedir } from "node:os";
import { join } from "node:path";
import { err, ok, type Result } from "../kernel/result.js";
import { readSniffFile } from "../sniff/sniffFile.js";
import type { Arguments, Source } from "./arguments.js";
import { findBattery } from "./battery.js";
import { parseChannelTable, type ChannelTable } from "./channelTable.js";
import { createIioPeripheral } from "./iioPeripheral.js";
import { openIio } from "./iioReader.js";
import type { Clock, Peripheral } from "./peripheral.js";
import type { Problem } from "./problem.js";
import { recordingOf } from "./recording.js";
import { createReplayPeripheral } from "./replayPeripheral.js";
import { keepIdentity, loadIdentity } from "./snifferIdentity.js";
import { openSysfs } from "./sysfs.js";
import { createVirtualPeripheral, type VirtualPeripheral } from "./virtualPeripheral.js";

export interface SourceOptions {
  readonly given: Arguments;
  readonly clock: Clock;
  /** The program's version. */
  readonly firmware: string;
  /** A line for whoever watches. */
  readonly say: (line: string) => void;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

export type OpenedSource =
  | { readonly kind: "virtual"; readonly peripheral: VirtualPeripheral }
  | { readonly kind: "iio" | "recording"; readonly peripheral: Peripheral };

export async function openSource(options: SourceOptions): Promise<Result<OpenedSource, Problem>> {
  const { given, clock } = options;
  switch (given.source.kind) {
    case "virtual":
      return ok({ kind: "virtual", peripheral: createVirtualPeripheral(given, clock) });
    case "recording":
      return openRecording(options, given.source.file);
    case "iio":
      return openSensor(options, given.source);
  }
}

async function openSensor(
  options: SourceOptions,
  { device }: Extract<Source, { kind: "iio" }>,
): Promise<Result<OpenedSource, Problem>> {
  const { given, clock, firmware, say, environment } = options;
  const table = given.channels === null ? ok(null) : await readTable(given.channels);
  if (!table.ok) return table;
  const sysfs = openSysfs(given.sysfs);
  const reader = await openIio(sysfs, device, table.value);
  if (!reader.ok) return reader;
  const stateFile = given.state ?? usualStateFile(environment);
  const identity = await loadIdentity(stateFile, () => randomBytes(8).toString("hex"));
  if (!identity.ok) return identity;
  const { snifferId, heatedMs } = identity.value;
  const peripheral = createIioPeripheral({
    reader: reader.value,
    clock,
    snifferId,
    model: "Self-built sniffer",
    firmware,
    heatedBeforeMs: heatedMs,
    readBattery: await findBattery(sysfs),
    keepHeated: async (heated) => {
      const kept = await keepIdentity(stateFile, { snifferId, heatedMs: heated });
      if (!kept.ok) say(`The heated hours could not be kept in ${stateFile}.`);
    },
  });
  return ok({ kind: "iio", peripheral });
}

async function openRecording(
  { clock, firmware, say }: SourceOptions,
  file: string,
): Promise<Result<OpenedSource, Problem>> {
  const text = await readText(file);
  if (!text.ok) return text;
  const { sniffs, faults } = readSniffFile(text.value);
  for (const { line, field, cause } of faults) say(`${file}, line ${line}: ${field} ${cause}; passed over.`);
  const recording = recordingOf(sniffs, (id) => createHash("sha256").update(id).digest("hex").slice(0, 16));
  if (!recording.ok) return err({ kind: "badRecording", file, cause: recording.error });
  const peripheral = createReplayPeripheral({
    recording: recording.value,
    clock,
    model: "Recorded sniffs",
    firmware,
    onPlay: (sniffId) => say(`Playing sniff ${sniffId}.`),
  });
  return ok({ kind: "recording", peripheral });
}

async function readTable(
  file: string,
): Promise<Result<{ readonly table: ChannelTable; readonly file: string }, Problem>> {
  const text = await readText(file);
  if (!text.ok) return text;
  const table = parseChannelTable(text.value);
  return table.ok ? ok({ table: table.value, file }) : err({ kind: "badTable", file, ...table.error });
}

async function readText(file: string): Promise<Result<string, Problem>> {
  try {
    return ok(await readFile(file, "utf8"));
  } catch (cause) {
    return err({ kind: "unreadable", file, detail: cause instanceof Error ? cause.message : String(cause) });
  }
}

/** @see systemd.exec(5), STATE_DIRECTORY; XDG Base Directory Specification, XDG_STATE_HOME */
function usualStateFile(environment: SourceOptions["environment"]): string {
  const service = environment["STATE_DIRECTORY"]?.split(":")[0];
  if (service !== undefined && service !== "") return join(service, "sniffer.json");
  const home = environment["XDG_STATE_HOME"];
  const base = home !== undefined && home !== "" ? home : join(homedir(), ".local", "state");
  return join(base, "nidor", "sniffer.json");
}
