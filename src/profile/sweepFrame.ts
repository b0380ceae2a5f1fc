/** SWEEP: one notification of at most 20 octets. PROFILE.md section 7. */
import { err, ok, type Result } from "../kernel/result.js";
import { checkWhole, littleEndian, viewOf } from "./bytes.js";
import { crcHolds, withCrc } from "./crc16.js";
import { DEVICE_TIME_MODULUS } from "./deviceTime.js";
import { MOST_CHANNELS } from "./layout.js";

/** One pass over all channels. */
export interface Sweep {
  /** The start command it belongs to, 1 to 255. */
  readonly run: number;
  /** Which sweep of the run, from 0. On the air modulo 2^16. */
  readonly counter: number;
  /** Device time at which the sweep began. On the air modulo 2^32. */
  readonly atMs: number;
  /** One resistance a channel, positive and finite. */
  readonly ohm: readonly number[];
}

/** What one notification says, with the wrapped numbers as they were on the air. */
export interface SweepFrame {
  readonly sequence: number;
  readonly deviceTimeMs: number;
  readonly run: number;
  readonly counter: number;
  readonly firstChannel: number;
  /** Does it end its sweep? */
  readonly last: boolean;
  /** Resistances from `firstChannel` on; null where the sniffer could not measure. */
  readonly ohm: readonly (number | null)[];
}

/** Why a notification is no frame. Whatever the reason, its resistances are lost and the sweep with them. */
export type FrameError =
  | { readonly kind: "length"; readonly found: number } // neither 16 nor 20 octets: firmware fault, or cut on the way
  | { readonly kind: "checksum" } // garbled on the way
  | { readonly kind: "shape" } // channel or run numbers that PROFILE.md section 7 forbids: firmware fault
  | { readonly kind: "resistance"; readonly channel: number }; // zero, negative, infinite, or an unknown NaN: firmware fault

export const CHANNELS_PER_FRAME = 2;
export const SEQUENCE_MODULUS = 0x10000;
export const COUNTER_MODULUS = 0x10000;

const HEAD_OCTETS = 10;
const CHECK_OCTETS = 2;
const LAST = 0x80;
/** The quiet NaN with an empty payload stands for "not measured". @see IEEE 754-2019, 6.2.1 */
const NOT_MEASURED = 0x7fc00000;

/** How many frames carry a sweep of so many channels. */
export const framesPerSweep = (channelCount: number): number => Math.ceil(channelCount / CHANNELS_PER_FRAME);

/**
 * The notifications that carry one sweep, in order.
 *
 * @param sweep - `ohm` has 1 to 64 values, positive and finite as 32-bit floats, or NaN for "not measured";
 *   `counter` and `atMs` are whole, 0 or more, and wrap here
 * @param firstSequence - sequence number of the first frame, 0 to 65535
 * @throws {RangeError} for anything else
 */
export function encodeSweep(sweep: Sweep, firstSequence: number): Uint8Array[] {
  checkWhole("run", sweep.run, 1, 255);
  checkWhole("counter", sweep.counter, 0, Number.MAX_SAFE_INTEGER);
  checkWhole("device time", sweep.atMs, 0, Number.MAX_SAFE_INTEGER);
  checkWhole("number of channels", sweep.ohm.length, 1, MOST_CHANNELS);
  checkWhole("sequence number", firstSequence, 0, SEQUENCE_MODULUS - 1);
  const frameCount = framesPerSweep(sweep.ohm.length);
  return Array.from({ length: frameCount }, (_, i) => {
    const firstChannel = i * CHANNELS_PER_FRAME;
    const ohm = sweep.ohm.slice(firstChannel, firstChannel + CHANNELS_PER_FRAME);
    return withCrc(
      littleEndian(
        [(firstSequence + i) % SEQUENCE_MODULUS, 2],
        [sweep.atMs % DEVICE_TIME_MODULUS, 4],
        [sweep.run, 1],
        [sweep.counter % COUNTER_MODULUS, 2],
        [firstChannel | (i === frameCount - 1 ? LAST : 0), 1],
        ...ohm.map((value) => [floatBits(value), 4] as const),
      ),
    );
  });
}

/** Never throws. */
export function decodeSweepFrame(bytes: Uint8Array): Result<SweepFrame, FrameError> {
  const valueCount = (bytes.length - HEAD_OCTETS - CHECK_OCTETS) / 4;
  if (valueCount !== 1 && valueCount !== CHANNELS_PER_FRAME)
    return err({ kind: "length", found: bytes.length });
  if (!crcHolds(bytes)) return err({ kind: "checksum" });
  const view = viewOf(bytes);
  const run = view.getUint8(6);
  const last = (view.getUint8(9) & LAST) !== 0;
  const firstChannel = view.getUint8(9) & ~LAST;
  if (run === 0 || !rightShape(firstChannel, valueCount, last)) return err({ kind: "shape" });
  const ohm: (number | null)[] = [];
  for (let i = 0; i < valueCount; i += 1) {
    const value = decodeOhm(view, HEAD_OCTETS + 4 * i);
    if (value === undefined) return err({ kind: "resistance", channel: firstChannel + i });
    ohm.push(value);
  }
  return ok({
    sequence: view.getUint16(0, true),
    deviceTimeMs: view.getUint32(2, true),
    run,
    counter: view.getUint16(7, true),
    firstChannel,
    last,
    ohm,
  });
}

/** Frames are filled: each starts at a multiple of two, and only the last may carry one value. */
function rightShape(firstChannel: number, valueCount: number, last: boolean): boolean {
  const fits = firstChannel + valueCount <= MOST_CHANNELS;
  return fits && firstChannel % CHANNELS_PER_FRAME === 0 && (last || valueCount === CHANNELS_PER_FRAME);
}

/** Null for "not measured", undefined for what is no resistance. */
function decodeOhm(view: DataView, offset: number): number | null | undefined {
  if (view.getUint32(offset, true) === NOT_MEASURED) return null;
  const ohm = view.getFloat32(offset, true);
  return ohm > 0 && Number.isFinite(ohm) ? ohm : undefined;
}

function floatBits(ohm: number): number {
  if (Number.isNaN(ohm)) return NOT_MEASURED;
  const view = new DataView(new ArrayBuffer(4));
  view.setFloat32(0, ohm);
  const sent = view.getFloat32(0);
  if (!(sent > 0 && Number.isFinite(sent))) throw new RangeError(`not a resistance: ${ohm} ohm`);
  return view.getUint32(0);
}
