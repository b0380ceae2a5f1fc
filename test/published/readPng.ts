/** Just enough of PNG (W3C, Portable Network Graphics, third edition) to see what size a picture has and what is on it. */
import { inflateSync } from "node:zlib";

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/** Octets a pixel, by colour type: 2 is RGB, 6 is RGB with alpha. */
const OCTETS: Readonly<Record<number, number>> = { 2: 3, 6: 4 };

export interface Png {
  readonly width: number;
  readonly height: number;
  readonly hasAlpha: boolean;
  /** Red, green, blue, and alpha where it has any. */
  pixelAt(x: number, y: number): readonly number[];
}

/** Reads an 8-bit RGB or RGBA picture that is not interlaced. @throws {RangeError} for any other */
export function readPng(file: Buffer): Png {
  if (!file.subarray(0, 8).equals(SIGNATURE)) throw new RangeError("not a PNG");
  const chunks = chunksOf(file);
  const header = chunks.find(({ type }) => type === "IHDR")?.data;
  if (header === undefined) throw new RangeError("a PNG without a header");
  const [width, height] = [header.readUInt32BE(0), header.readUInt32BE(4)];
  const [depth, colourType, , , interlaced] = header.subarray(8);
  const octets = OCTETS[colourType ?? -1];
  if (depth !== 8 || octets === undefined || interlaced !== 0) throw new RangeError("another kind of PNG");
  const data = chunks.filter(({ type }) => type === "IDAT").map((chunk) => chunk.data);
  const pixels = unfiltered(inflateSync(Buffer.concat(data)), width * octets, height, octets);
  return {
    width,
    height,
    hasAlpha: octets === 4,
    pixelAt: (x, y) => [...pixels.subarray((y * width + x) * octets, (y * width + x + 1) * octets)],
  };
}

function chunksOf(file: Buffer): { readonly type: string; readonly data: Buffer }[] {
  const chunks = [];
  for (let at = SIGNATURE.length; at < file.length;) {
    const length = file.readUInt32BE(at);
    chunks.push({
      type: file.toString("latin1", at + 4, at + 8),
      data: file.subarray(at + 8, at + 8 + length),
    });
    at += length + 12;
  }
  return chunks;
}

/** Undoes the filter of each line (section 9 of the specification). */
function unfiltered(raw: Buffer, lineOctets: number, height: number, step: number): Uint8Array {
  const out = new Uint8Array(lineOctets * height);
  for (let y = 0; y < height; y += 1) {
    const filter = raw[y * (lineOctets + 1)] ?? 0;
    for (let i = 0; i < lineOctets; i += 1) {
      const at = y * lineOctets + i;
      const left = i < step ? 0 : (out[at - step] ?? 0);
      const up = y === 0 ? 0 : (out[at - lineOctets] ?? 0);
      const upLeft = y === 0 || i < step ? 0 : (out[at - lineOctets - step] ?? 0);
      const guess = [0, left, up, Math.floor((left + up) / 2), paeth(left, up, upLeft)][filter];
      if (guess === undefined) throw new RangeError(`a line with filter ${filter}`);
      out[at] = (raw[y * (lineOctets + 1) + 1 + i] ?? 0) + guess;
    }
  }
  return out;
}

function paeth(left: number, up: number, upLeft: number): number {
  const estimate = left + up - upLeft;
  const [a, b, c] = [left, up, upLeft].map((value) => Math.abs(estimate - value));
  if (a === undefined || b === undefined || c === undefined) throw new RangeError("unreachable");
  if (a <= b && a <= c) return left;
  return b <= c ? up : upLeft;
}
