/** LAYOUT: who the sniffer is, its channels and its times. PROFILE.md section 4. */
import type { Channel } from "../kernel/channel.js";
import { err, ok, type Result } from "../kernel/result.js";
import { checkWhole, fromHex, littleEndian, toHex, viewOf } from "./bytes.js";
import { crcHolds, withCrc } from "./crc16.js";

/** A newer minor version only adds octets at the end; a newer major version may change anything. */
export interface ProfileVersion {
  readonly major: number;
  readonly minor: number;
}

/** The version this code speaks. */
export const PROFILE_VERSION: ProfileVersion = { major: 1, minor: 0 };

export interface SnifferLayout {
  readonly profileVersion: ProfileVersion;
  /** 16 lower-case hexadecimal digits: eight octets set once at the factory. */
  readonly snifferId: string;
  /** 1 to 64 of them, in the order of a sweep. */
  readonly channels: readonly Channel[];
  /** From the start of one sweep to the start of the next. */
  readonly sweepPeriodMs: number;
  /** From switching on to ready. */
  readonly warmUpMs: number;
}

/** Why a layout could not be read. */
export type LayoutError =
  | { readonly kind: "profileVersion"; readonly found: ProfileVersion; readonly known: ProfileVersion } // newer sniffer than app: update the app
  | { readonly kind: "length"; readonly expected: number; readonly found: number } // cut off: read again
  | { readonly kind: "checksum" } // garbled: read again
  | { readonly kind: "prohibited"; readonly field: string; readonly raw: number | string }; // firmware fault: report it to its author

export const MOST_CHANNELS = 64;

const HEAD_OCTETS = 19;
const CHANNEL_OCTETS = 5;
const CHECK_OCTETS = 2;
const UNSPECIFIED_HEATER = -0x8000;
const UNSPECIFIED_DWELL = 0xffff;
const ABSOLUTE_ZERO_C = -273;

/** @throws {RangeError} if a field does not fit PROFILE.md section 4 */
export function encodeLayout(layout: SnifferLayout): Uint8Array {
  const { profileVersion, snifferId, channels, sweepPeriodMs, warmUpMs } = layout;
  checkWhole("major version", profileVersion.major, 1, 255);
  checkWhole("minor version", profileVersion.minor, 0, 255);
  if (!isSnifferId(snifferId)) throw new RangeError(`not a sniffer id: ${snifferId}`);
  checkWhole("sweep period", sweepPeriodMs, 1, 0xffffffff);
  checkWhole("warm-up", warmUpMs, 0, 0xffffffff);
  checkWhole("number of channels", channels.length, 1, MOST_CHANNELS);
  return withCrc(
    Uint8Array.of(
      profileVersion.major,
      profileVersion.minor,
      ...fromHex(snifferId),
      ...littleEndian([sweepPeriodMs, 4], [warmUpMs, 4], [channels.length, 1]),
      ...channels.flatMap((channel) => [...encodeChannel(channel)]),
    ),
  );
}

/** Never throws. Octets between the channels and the check belong to newer minor versions and are passed over. */
export function decodeLayout(bytes: Uint8Array): Result<SnifferLayout, LayoutError> {
  const major = bytes[0];
  const minor = bytes[1];
  if (major === undefined || minor === undefined) return wrongLength(HEAD_OCTETS, bytes);
  const found = { major, minor };
  if (major > PROFILE_VERSION.major) return err({ kind: "profileVersion", found, known: PROFILE_VERSION });
  const channelCount = bytes[HEAD_OCTETS - 1];
  if (channelCount === undefined) return wrongLength(HEAD_OCTETS, bytes);
  const expected = HEAD_OCTETS + channelCount * CHANNEL_OCTETS + CHECK_OCTETS;
  if (bytes.length < expected) return wrongLength(expected, bytes);
  if (!crcHolds(bytes)) return err({ kind: "checksum" });
  if (minor <= PROFILE_VERSION.minor && bytes.length > expected) return wrongLength(expected, bytes);
  return checkLayout({
    profileVersion: found,
    snifferId: toHex(bytes.subarray(2, 10)),
    channels: Array.from({ length: channelCount }, (_, i) =>
      decodeChannel(bytes, HEAD_OCTETS + i * CHANNEL_OCTETS),
    ),
    sweepPeriodMs: viewOf(bytes).getUint32(10, true),
    warmUpMs: viewOf(bytes).getUint32(14, true),
  });
}

function checkLayout(layout: SnifferLayout): Result<SnifferLayout, LayoutError> {
  const prohibited = (field: string, raw: number | string) =>
    err({ kind: "prohibited", field, raw } as const);
  const { profileVersion, snifferId, channels, sweepPeriodMs } = layout;
  if (profileVersion.major === 0) return prohibited("profileVersion", 0);
  if (!isSnifferId(snifferId)) return prohibited("snifferId", snifferId);
  if (sweepPeriodMs === 0) return prohibited("sweepPeriodMs", 0);
  if (channels.length < 1 || channels.length > MOST_CHANNELS) return prohibited("channels", channels.length);
  for (const { heaterC } of channels) {
    if (heaterC !== null && heaterC < ABSOLUTE_ZERO_C) return prohibited("heaterC", heaterC);
  }
  return ok(layout);
}

/** An identity nobody set, all zeros or all ones, would make strangers look alike. */
function isSnifferId(text: string): boolean {
  return /^[0-9a-f]{16}$/.test(text) && !/^(0{16}|f{16})$/.test(text);
}

function encodeChannel({ sensor, heaterC, dwellMs }: Channel): Uint8Array {
  checkWhole("sensor", sensor, 0, 255);
  if (heaterC !== null) checkWhole("heater temperature", heaterC, ABSOLUTE_ZERO_C, 0x7fff);
  if (dwellMs !== null) checkWhole("dwell", dwellMs, 0, UNSPECIFIED_DWELL - 1);
  return littleEndian([sensor, 1], [heaterC ?? UNSPECIFIED_HEATER, 2], [dwellMs ?? UNSPECIFIED_DWELL, 2]);
}

function decodeChannel(bytes: Uint8Array, offset: number): Channel {
  const view = viewOf(bytes);
  const heaterC = view.getInt16(offset + 1, true);
  const dwellMs = view.getUint16(offset + 3, true);
  return {
    sensor: view.getUint8(offset),
    heaterC: heaterC === UNSPECIFIED_HEATER ? null : heaterC,
    dwellMs: dwellMs === UNSPECIFIED_DWELL ? null : dwellMs,
  };
}

const wrongLength = (expected: number, bytes: Uint8Array) =>
  err({ kind: "length", expected, found: bytes.length } as const);
