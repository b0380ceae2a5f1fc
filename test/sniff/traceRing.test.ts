import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  createTraceRing,
  TRACE_BUCKETS,
  TRACE_WINDOWS_MS,
  type TraceRing,
} from "../../src/sniff/traceRing.js";

const MINUTE = TRACE_WINDOWS_MS[0];
const windowOf = (ring: TraceRing, lengthMs: (typeof TRACE_WINDOWS_MS)[number]) =>
  ring.windows.get(lengthMs)!;
const bucketAt = (
  ring: TraceRing,
  lengthMs: (typeof TRACE_WINDOWS_MS)[number],
  atMs: number,
  channel = 0,
) => {
  const { bucketMs, least, most } = windowOf(ring, lengthMs);
  const slot = Math.floor(atMs / bucketMs) % TRACE_BUCKETS;
  return [least[channel]![slot], most[channel]![slot]];
};

describe("the traces", () => {
  it("keep both ends of what fell into a stretch, whatever its order", () => {
    const ring = createTraceRing(1);
    for (const [atMs, ohm] of [
      [0, 500],
      [50, 200],
      [100, 900],
      [150, 600],
    ] as const)
      ring.push(atMs, [ohm]);
    // A minute in 300 stretches: 200 ms each, counted by hand.
    expect(bucketAt(ring, MINUTE, 0)).toEqual([200, 900]);
    ring.push(200, [650]);
    expect(bucketAt(ring, MINUTE, 0)).toEqual([200, 900]);
    expect(bucketAt(ring, MINUTE, 200)).toEqual([650, 650]);
  });

  it("leave a hole where nothing came, also where older values stood a window ago", () => {
    const ring = createTraceRing(1);
    ring.push(1000, [100]);
    ring.push(1000 + MINUTE + 400, [300]);
    expect(bucketAt(ring, MINUTE, 1000 + MINUTE)).toEqual([Number.NaN, Number.NaN]);
    expect(bucketAt(ring, MINUTE, 1000 + MINUTE + 200)).toEqual([Number.NaN, Number.NaN]);
    expect(bucketAt(ring, MINUTE, 1000 + MINUTE + 400)).toEqual([300, 300]);
  });

  it("begin anew where time goes back, as after a restart", () => {
    const ring = createTraceRing(1);
    ring.push(50_000, [100]);
    ring.push(200, [300]);
    expect(ring.lastMs).toBe(200);
    expect(windowOf(ring, MINUTE).least[0]!.filter((value) => !Number.isNaN(value))).toEqual(
      Float32Array.of(300),
    );
  });

  it.each([0, 1.5, -1])("refuse %s channels", (channels) => {
    expect(() => createTraceRing(channels)).toThrow(RangeError);
  });
  it("refuse a sweep of other channels", () => {
    expect(() => createTraceRing(2).push(0, [1])).toThrow(RangeError);
  });

  it("keep at every zoom the smallest and the largest of what came, and hold no value that did not come", () => {
    const sweep = fc.record({
      afterMs: fc.integer({ min: 0, max: 30_000 }),
      ohm: fc.integer({ min: 1, max: 1_000_000 }),
    });
    fc.assert(
      fc.property(fc.array(sweep, { minLength: 1, maxLength: 200 }), (sweeps) => {
        const ring = createTraceRing(2);
        let atMs = 0;
        const came = sweeps.map(({ afterMs, ohm }) => {
          atMs += afterMs;
          ring.push(atMs, [ohm, 2 * ohm]);
          return { atMs, ohm };
        });
        for (const lengthMs of TRACE_WINDOWS_MS) {
          const window = windowOf(ring, lengthMs);
          const oldest = (window.newest - TRACE_BUCKETS + 1) * window.bucketMs;
          const inside = came.filter((one) => one.atMs >= oldest).map(({ ohm }) => ohm);
          for (const channel of [0, 1]) {
            const factor = channel + 1;
            const least = [...window.least[channel]!].filter((value) => !Number.isNaN(value));
            const most = [...window.most[channel]!].filter((value) => !Number.isNaN(value));
            expect(Math.min(...least)).toBe(factor * Math.min(...inside));
            expect(Math.max(...most)).toBe(factor * Math.max(...inside));
            for (const value of [...least, ...most]) expect(inside).toContain(value / factor);
          }
        }
      }),
    );
  });

  it("take an hour at ten sweeps a second in the memory they began with", () => {
    const ring = createTraceRing(64);
    const sizeOf = () =>
      [...ring.windows.values()].reduce(
        (octets, { least, most }) =>
          octets + [...least, ...most].reduce((sum, values) => sum + values.byteLength, 0),
        0,
      );
    const before = sizeOf();
    const ohm = Array.from({ length: 64 }, (_, channel) => 1000 + channel);
    for (let sweep = 0; sweep < 36_000; sweep += 1) ring.push(sweep * 100, ohm);
    expect(sizeOf()).toBe(before);
    expect(before).toBeLessThan(500_000);
    expect(windowOf(ring, TRACE_WINDOWS_MS[2]).least[0]!.every((value) => value === 1000)).toBe(true);
  });
});
