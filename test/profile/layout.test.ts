import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crc16, withCrc } from "../../src/profile/crc16.js";
import { decodeLayout, encodeLayout, type SnifferLayout } from "../../src/profile/layout.js";

const u32 = fc.integer({ min: 0, max: 0xffffffff });
const channels = fc.record({
  sensor: fc.integer({ min: 0, max: 255 }),
  heaterC: fc.option(fc.integer({ min: -273, max: 0x7fff })),
  dwellMs: fc.option(fc.integer({ min: 0, max: 0xfffe })),
});
const layouts: fc.Arbitrary<SnifferLayout> = fc.record({
  profileVersion: fc.constant({ major: 1, minor: 0 }),
  snifferId: fc
    .bigInt({ min: 1n, max: 0xfffffffffffffffen })
    .map((number) => number.toString(16).padStart(16, "0")),
  channels: fc.array(channels, { minLength: 1, maxLength: 64 }),
  sweepPeriodMs: u32.map((ms) => Math.max(1, ms)),
  warmUpMs: u32,
});
const plain: SnifferLayout = {
  profileVersion: { major: 1, minor: 0 },
  snifferId: "00a1b2c3d4e5f607",
  channels: [{ sensor: 0, heaterC: 200, dwellMs: 250 }],
  sweepPeriodMs: 1000,
  warmUpMs: 180_000,
};

describe("a layout", () => {
  it("comes back as it was sent", () => {
    fc.assert(
      fc.property(layouts, (layout) => {
        expect(decodeLayout(encodeLayout(layout))).toEqual({ ok: true, value: layout });
      }),
    );
  });

  it("cut anywhere is refused, never half read", () => {
    fc.assert(
      fc.property(layouts, fc.nat(), (layout, at) => {
        const sent = encodeLayout(layout);
        const decoded = decodeLayout(sent.subarray(0, at % sent.length));
        expect(!decoded.ok && decoded.error.kind).toBe("length");
      }),
    );
  });

  it("with one octet changed is refused", () => {
    fc.assert(
      fc.property(layouts, fc.nat(), fc.integer({ min: 1, max: 255 }), (layout, at, change) => {
        const sent = encodeLayout(layout);
        sent[at % sent.length]! ^= change;
        expect(decodeLayout(sent).ok).toBe(false);
      }),
    );
  });

  it("with octets after its end is refused at our own version", () => {
    const sent = encodeLayout(plain);
    const longer = withCrc(Uint8Array.of(...sent.subarray(0, -2), 0xaa));
    expect(decodeLayout(longer)).toEqual({
      ok: false,
      error: { kind: "length", expected: 26, found: 27 }, // counted by hand: 19 + 5 + 2
    });
  });

  it("of a later major version names both versions, whatever else it holds", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 255 }),
        fc.nat({ max: 255 }),
        fc.uint8Array(),
        (major, minor, rest) => {
          expect(decodeLayout(Uint8Array.of(major, minor, ...rest))).toEqual({
            ok: false,
            error: { kind: "profileVersion", found: { major, minor }, known: { major: 1, minor: 0 } },
          });
        },
      ),
    );
  });

  it("never throws, whatever the octets", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        expect(typeof decodeLayout(bytes).ok).toBe("boolean");
      }),
    );
  });

  it.each([
    ["profileVersion", 0, [0]],
    ["sweepPeriodMs", 10, [0, 0, 0, 0]],
    ["heaterC", 20, [0xee, 0xfe]], // -274 °C
    ["snifferId", 2, [255, 255, 255, 255, 255, 255, 255, 255]],
  ])("with a forbidden %s is refused", (field, at, octets) => {
    const sent = encodeLayout(plain).subarray(0, -2);
    sent.set(octets, at);
    const decoded = decodeLayout(withCrc(sent));
    expect(!decoded.ok && decoded.error).toMatchObject({ kind: "prohibited", field });
  });

  it.each([0, 65])("of %s channels is refused", (count) => {
    const head = encodeLayout(plain).slice(0, 19);
    head[18] = count;
    const decoded = decodeLayout(withCrc(Uint8Array.of(...head, ...new Uint8Array(5 * count))));
    expect(decoded).toEqual({ ok: false, error: { kind: "prohibited", field: "channels", raw: count } });
  });

  it.each([
    ["no channels", { channels: [] }],
    ["65 channels", { channels: Array.from({ length: 65 }, () => plain.channels[0]!) }],
    ["an upper-case identity", { snifferId: "00A1B2C3D4E5F607" }],
    ["an identity nobody set", { snifferId: "0000000000000000" }],
    ["no sweep period", { sweepPeriodMs: 0 }],
    ["half a millisecond", { warmUpMs: 0.5 }],
    ["the dwell that means unspecified", { channels: [{ sensor: 0, heaterC: 200, dwellMs: 0xffff }] }],
    ["a heater colder than absolute zero", { channels: [{ sensor: 0, heaterC: -274, dwellMs: 0 }] }],
    ["sensor 256", { channels: [{ sensor: 256, heaterC: 200, dwellMs: 0 }] }],
  ])("our own code may not send %s", (_what, change) => {
    expect(() => encodeLayout({ ...plain, ...change })).toThrow(RangeError);
  });
});

describe("the check", () => {
  // What the doc comment promises for 20 octets, by linearity: a pattern of wrong bits goes unnoticed just if the
  // marks of its bits cancel. Marks of the 144 checked bits come from crc16, those of its own 16 bits are plain.
  const zeros = crc16(new Uint8Array(18));
  const marks = Array.from({ length: 160 }, (_, bit) => {
    if (bit >= 144) return 1 << (bit - 144);
    const frame = new Uint8Array(18);
    frame[bit >> 3] = 1 << (bit & 7);
    return crc16(frame) ^ zeros;
  });

  it("notices one, two and three wrong bits wherever they are", () => {
    const seen = new Set(marks);
    expect(seen.has(0)).toBe(false); // one wrong bit
    expect(seen.size).toBe(160); // two
    let threes = 0;
    for (let i = 0; i < 160; i += 1) {
      for (let j = i + 1; j < 160; j += 1) if (seen.has(marks[i]! ^ marks[j]!)) threes += 1;
    }
    expect(threes).toBe(0);
  });

  it("notices every odd number of wrong bits", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat({ max: 159 }), { minLength: 1, maxLength: 159 }), (bits) => {
        const odd = bits.length % 2 === 1 ? bits : bits.slice(1);
        expect(odd.reduce((sum, bit) => sum ^ marks[bit]!, 0)).not.toBe(0);
      }),
    );
  });

  it("notices every garbling of one octet, its own included, or of two neighbours that it checks", () => {
    const marksOf = (octet: number) =>
      Array.from({ length: 256 }, (_, wrong) =>
        [0, 1, 2, 3, 4, 5, 6, 7].reduce(
          (sum, bit) => ((wrong >> bit) & 1 ? sum ^ marks[8 * octet + bit]! : sum),
          0,
        ),
      );
    for (let octet = 0; octet < 20; octet += 1) {
      const alone = new Set(marksOf(octet).slice(1));
      expect(alone.has(0)).toBe(false);
      if (octet < 17) expect(marksOf(octet + 1).some((mark) => alone.has(mark))).toBe(false);
    }
  });
});
