import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { withCrc } from "../../src/profile/crc16.js";
import { decodeSweepFrame, encodeSweep, framesPerSweep, type Sweep } from "../../src/profile/sweepFrame.js";
import { ohm } from "./sweepArbitraries.js";

const sweeps: fc.Arbitrary<Sweep> = fc.record({
  run: fc.integer({ min: 1, max: 255 }),
  counter: fc.nat({ max: 10 ** 6 }),
  atMs: fc.maxSafeNat(),
  ohm: fc.array(ohm, { minLength: 1, maxLength: 64 }),
});
const sequences = fc.nat({ max: 0xffff });
const plain: Sweep = { run: 1, counter: 0, atMs: 0, ohm: [1000, 2000, 3000] };

describe("a sweep's frames", () => {
  it("say together what the sweep said, in order", () => {
    fc.assert(
      fc.property(sweeps, sequences, (sweep, firstSequence) => {
        const frames = encodeSweep(sweep, firstSequence).map(decodeSweepFrame);
        const values = frames.flatMap((frame) => (frame.ok ? [frame.value] : []));
        expect(values).toHaveLength(framesPerSweep(sweep.ohm.length));
        expect(values.flatMap((frame) => frame.ohm)).toEqual(sweep.ohm);
        values.forEach((frame, i) => {
          expect(frame).toMatchObject({
            sequence: (firstSequence + i) % 65536,
            deviceTimeMs: sweep.atMs % 2 ** 32,
            run: sweep.run,
            counter: sweep.counter % 65536,
            firstChannel: 2 * i,
            last: i === values.length - 1,
          });
        });
      }),
    );
  });

  it("are 20 octets, the last of an odd number of channels 16", () => {
    fc.assert(
      fc.property(sweeps, (sweep) => {
        const lengths = encodeSweep(sweep, 0).map((frame) => frame.length);
        expect(lengths.slice(0, -1).every((length) => length === 20)).toBe(true);
        expect(lengths.at(-1)).toBe(sweep.ohm.length % 2 === 0 ? 20 : 16);
      }),
    );
  });

  it("number one, two, two, three, ... for 1, 2, 3, 4, 5 and 64 channels", () => {
    expect([1, 2, 3, 4, 5, 64].map(framesPerSweep)).toEqual([1, 1, 2, 2, 3, 32]); // counted by hand
  });

  it("carry 'not measured' for NaN, and give null back", () => {
    const [frame] = encodeSweep({ ...plain, ohm: [Number.NaN, 5] }, 0).map(decodeSweepFrame);
    expect(frame?.ok && frame.value.ohm).toEqual([null, 5]);
  });
});

describe("what may not be sent", () => {
  it.each([
    ["zero", 0],
    ["minus zero", -0],
    ["a negative", -1],
    ["infinite", Number.POSITIVE_INFINITY],
    ["too large for 32 bits", 1e39],
    ["too small for 32 bits", 1e-46],
  ])("a resistance that is %s", (_what, value) => {
    expect(() => encodeSweep({ ...plain, ohm: [1, value] }, 0)).toThrow(RangeError);
  });

  it.each([
    ["run 0", { run: 0 }],
    ["run 256", { run: 256 }],
    ["a counter of -1", { counter: -1 }],
    ["half a millisecond", { atMs: 0.5 }],
    ["no channels", { ohm: [] }],
    ["65 channels", { ohm: Array.from({ length: 65 }, () => 1) }],
  ])("%s", (_what, change) => {
    expect(() => encodeSweep({ ...plain, ...change }, 0)).toThrow(RangeError);
  });

  it.each([-1, 65536, 0.5])("sequence number %s", (firstSequence) => {
    expect(() => encodeSweep(plain, firstSequence)).toThrow(RangeError);
  });
});

describe("what is refused", () => {
  it("any octets without their check, and nothing throws", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 24 }), (bytes) => {
        expect(typeof decodeSweepFrame(bytes).ok).toBe("boolean");
      }),
    );
  });

  it("any length but 16 and 20", () => {
    for (let length = 0; length <= 30; length += 1) {
      if (length === 16 || length === 20) continue;
      const bytes = withCrc(new Uint8Array(Math.max(0, length - 2))).subarray(0, length);
      expect(decodeSweepFrame(bytes)).toEqual({ ok: false, error: { kind: "length", found: length } });
    }
  });

  const spoiled = (at: number, ...octets: number[]) => {
    const bytes = encodeSweep(plain, 0)[0]!.subarray(0, -2);
    bytes.set(octets, at);
    return decodeSweepFrame(withCrc(bytes));
  };

  it("another NaN than the one for 'not measured'", () => {
    const error = { kind: "resistance", channel: 1 };
    expect(spoiled(14, 0, 0, 0xc0, 0xff)).toEqual({ ok: false, error });
    expect(spoiled(14, 1, 0, 0xc0, 0x7f)).toEqual({ ok: false, error });
  });

  it("a channel beyond the 64th, and half a frame that is not the last", () => {
    expect(spoiled(9, 0x80 | 64)).toEqual({ ok: false, error: { kind: "shape" } });
    expect(spoiled(9, 0x80 | 62).ok).toBe(true);
    const [, second] = encodeSweep(plain, 0);
    const half = second!.slice(0, -2);
    half[9] = 2;
    expect(decodeSweepFrame(withCrc(half))).toEqual({ ok: false, error: { kind: "shape" } });
  });
});
