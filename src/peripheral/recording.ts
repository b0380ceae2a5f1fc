/** Sniffs from a file as a sniffer would have sent them: one layout, and a timeline of sweeps for each sniff. */
import type { AirReading } from "../kernel/air.js";
import { sameChannels, type Channel } from "../kernel/channel.js";
import { err, ok, type Result } from "../kernel/result.js";
import { encodeLayout, PROFILE_VERSION, type SnifferLayout } from "../profile/layout.js";
import type { Sniff, SniffPhase } from "../sniff/sniff.js";
import { median } from "../stats/summary.js";
import type { Senses } from "./core.js";

/** One sweep and when it is over, counted from the start of the run. */
export interface RecordedSweep {
  readonly startMs: number;
  readonly endMs: number;
  readonly ohm: readonly number[];
  /** The air of its phase. */
  readonly air: AirReading;
}

export interface Recording {
  readonly layout: SnifferLayout;
  readonly senses: Senses;
  /** One list of sweeps a sniff, each in time order. */
  readonly sniffs: readonly { readonly id: string; readonly sweeps: readonly RecordedSweep[] }[];
}

/** Where nothing says how long a sweep took. */
const USUAL_PERIOD_MS = 1000;
const MOST_DWELL_MS = 0xfffe;

/**
 * @param sniffs - of one sniffer, at least one
 * @param idOf - gives a sniffer id, 16 hexadecimal digits, for a text that is none
 * @returns or why these sniffs cannot be played by one sniffer
 */
export function recordingOf(
  sniffs: readonly Sniff[],
  idOf: (text: string) => string,
): Result<Recording, string> {
  const [first] = sniffs;
  if (first === undefined) return err("it holds no sniff");
  const { sniffer } = first;
  const other = sniffs.find(
    (sniff) => sniff.sniffer.id !== sniffer.id || !sameChannels(sniff.sniffer.channels, sniffer.channels),
  );
  if (other !== undefined) {
    return err(`sniff ${other.id} was taken with another sniffer, or other channels, than ${first.id}`);
  }
  const layout: SnifferLayout = {
    profileVersion: PROFILE_VERSION,
    snifferId: isSnifferId(sniffer.id) ? sniffer.id : idOf(sniffer.id),
    sweepPeriodMs: periodMs(sniffs),
    warmUpMs: 0,
    channels: sniffer.channels.map(asSent),
  };
  try {
    encodeLayout(layout);
  } catch (cause) {
    return err(
      `its channels do not fit the profile (${cause instanceof Error ? cause.message : String(cause)})`,
    );
  }
  return ok({
    layout,
    senses: sensesOf(sniffs),
    sniffs: sniffs.map((sniff) => ({ id: sniff.id, sweeps: timeline(sniff, layout.sweepPeriodMs) })),
  });
}

/** Clean air, then the headspace, as long apart as the sniff says, or else one sweep. */
function timeline(sniff: Sniff, period: number): RecordedSweep[] {
  const clean =
    sniff.cleanAir === undefined ? [] : phaseSweeps(sniff.cleanAir, 0, period, sniff.air?.cleanAir);
  const lastEndMs = clean.at(-1)?.endMs;
  const gapMs = Math.max(period, sniff.cleanAirAgeMs ?? period);
  const beginMs = lastEndMs === undefined ? 0 : lastEndMs + gapMs - period;
  return [...clean, ...phaseSweeps(sniff.headspace, beginMs, period, sniff.air?.headspace)];
}

function phaseSweeps(
  { atMs, ohm }: SniffPhase,
  beginMs: number,
  period: number,
  air: AirReading | undefined,
): RecordedSweep[] {
  const firstMs = atMs[0] ?? 0;
  return ohm.map((row, i) => {
    const startMs = beginMs + Math.round((atMs[i] ?? firstMs) - firstMs);
    return { startMs, endMs: startMs + period, ohm: row, air: air ?? {} };
  });
}

/** The median step between sweeps, over all phases. */
function periodMs(sniffs: readonly Sniff[]): number {
  const steps = sniffs
    .flatMap(({ cleanAir, headspace }) => [cleanAir?.atMs ?? [], headspace.atMs])
    .flatMap((atMs) => atMs.slice(1).map((time, i) => time - (atMs[i] ?? time)))
    .filter((step) => step >= 1);
  return steps.length === 0 ? USUAL_PERIOD_MS : Math.round(median(Float64Array.from(steps)));
}

/** LAYOUT holds whole degrees and milliseconds. */
function asSent({ sensor, heaterC, dwellMs }: Channel): Channel {
  return {
    sensor,
    heaterC: heaterC === null ? null : Math.round(heaterC),
    dwellMs: dwellMs === null || dwellMs > MOST_DWELL_MS ? null : Math.round(dwellMs),
  };
}

/** A reading counts as there if any phase has it; pressure, which has no "not known", only if all have it. */
function sensesOf(sniffs: readonly Sniff[]): Senses {
  const readings = sniffs.flatMap(({ air, cleanAir }) => [
    ...(cleanAir === undefined ? [] : [air?.cleanAir]),
    air?.headspace,
  ]);
  return {
    temperature: readings.some((reading) => reading?.temperatureC !== undefined),
    humidity: readings.some((reading) => reading?.humidityPct !== undefined),
    pressure: readings.every((reading) => reading?.pressurePa !== undefined),
    battery: false,
  };
}

const isSnifferId = (text: string): boolean => /^(?!0{16}|f{16})[0-9a-f]{16}$/.test(text);
