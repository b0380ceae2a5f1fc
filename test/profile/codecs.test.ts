import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeBatteryLevel, encodeBatteryLevel } from "../../src/profile/battery.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import {
  CONTROL_ATT_ERRORS,
  decodeControl,
  encodeControl,
  nextRun,
  type ControlCommand,
} from "../../src/profile/control.js";
import { decodeText, encodeText } from "../../src/profile/deviceInformation.js";
import {
  decodeHumidity,
  decodePressure,
  decodeTemperature,
  encodeHumidity,
  encodePressure,
  encodeTemperature,
} from "../../src/profile/environment.js";
import { decodeStatus, encodeStatus, SNIFFER_STATES } from "../../src/profile/status.js";
import { canonicalUuid } from "../../src/profile/uuids.js";

const bytes = fc.uint8Array({ maxLength: 24 });

describe("standard readings", () => {
  it("come back as they were sent, to their step", () => {
    fc.assert(
      fc.property(fc.integer({ min: -27315, max: 32767 }), fc.integer({ min: 0, max: 10000 }), (t, h) => {
        expect(decodeTemperature(encodeTemperature(t / 100))).toEqual({ ok: true, value: t / 100 });
        expect(decodeHumidity(encodeHumidity(h / 100))).toEqual({ ok: true, value: h / 100 });
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffffff }), (p) => {
        expect(decodePressure(encodePressure(p / 10))).toEqual({ ok: true, value: p / 10 });
      }),
    );
  });

  it("are rounded to the step, half a step at most", () => {
    fc.assert(
      fc.property(fc.double({ min: -273.15, max: 327.67, noNaN: true }), (temperatureC) => {
        const back = decodeTemperature(encodeTemperature(temperatureC));
        expect(back.ok && back.value !== null && Math.abs(back.value - temperatureC)).toBeLessThan(0.0050001);
      }),
    );
  });

  it("of a wrong size are refused, whatever they hold", () => {
    fc.assert(
      fc.property(bytes, (value) => {
        const wrong = (expected: number) => ({
          ok: false,
          error: { kind: "length", expected, found: value.length },
        });
        if (value.length !== 2) expect(decodeTemperature(value)).toEqual(wrong(2));
        if (value.length !== 2) expect(decodeHumidity(value)).toEqual(wrong(2));
        if (value.length !== 4) expect(decodePressure(value)).toEqual(wrong(4));
        if (value.length !== 1) expect(decodeBatteryLevel(value)).toEqual(wrong(1));
      }),
    );
  });

  it.each([
    ["temperature below absolute zero", () => encodeTemperature(-273.16)],
    ["temperature above the field", () => encodeTemperature(327.68)],
    ["temperature that is no number", () => encodeTemperature(Number.NaN)],
    ["humidity above 100 %", () => encodeHumidity(100.01)],
    ["humidity below 0 %", () => encodeHumidity(-0.01)],
    ["negative pressure", () => encodePressure(-0.1)],
    ["pressure that is no number", () => encodePressure(Number.NaN)],
    ["battery above 100 %", () => encodeBatteryLevel(101)],
    ["battery at half a per cent", () => encodeBatteryLevel(0.5)],
  ])("our own code may not send %s", (_what, encode) => {
    expect(encode).toThrow(RangeError);
  });

  it("are read out of the middle of a larger buffer", () => {
    const buffer = fromHex("ffff2909ffff");
    expect(decodeTemperature(buffer.subarray(2, 4))).toEqual({ ok: true, value: 23.45 });
  });
});

describe("text", () => {
  // The WHATWG Encoding standard's decoder, as Node has it, in strict mode and keeping a byte order mark.
  const reference = (value: Uint8Array): string | null => {
    try {
      return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(value);
    } catch {
      return null;
    }
  };

  it("is read as the WHATWG decoder reads it, and refused where that refuses", () => {
    const nearUtf8 = fc
      .tuple(fc.string({ unit: "binary" }), fc.nat(), fc.nat({ max: 255 }), fc.boolean())
      .map(([text, at, octet, spoil]) => {
        const encoded = new TextEncoder().encode(text);
        if (spoil && encoded.length > 0) encoded[at % encoded.length] = octet;
        return encoded;
      });
    fc.assert(
      fc.property(fc.oneof(bytes, nearUtf8), (value) => {
        const text = reference(value);
        expect(decodeText(value)).toEqual(
          text === null ? { ok: false, error: { kind: "text" } } : { ok: true, value: text },
        );
      }),
      { numRuns: 2000 },
    );
  });

  it.each(["c080", "e08080", "eda080", "f4908080", "80", "e282", "ff"])(
    "%s is not well-formed (Unicode standard, table 3-7)",
    (hex) => {
      expect(decodeText(fromHex(hex))).toEqual({ ok: false, error: { kind: "text" } });
    },
  );

  it("is written as the WHATWG encoder writes it", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
        expect(toHex(encodeText(text))).toBe(toHex(new TextEncoder().encode(text)));
      }),
    );
  });

  it("may not be longer than an attribute, nor hold half a character", () => {
    expect(encodeText("a".repeat(512))).toHaveLength(512);
    expect(() => encodeText("a".repeat(513))).toThrow(RangeError);
    expect(() => encodeText("é".repeat(257))).toThrow(RangeError);
    expect(() => encodeText("\ud83d")).toThrow(RangeError);
  });
});

describe("status", () => {
  const u32 = fc.integer({ min: 0, max: 0xffffffff });
  const statuses = fc.record({
    state: fc.constantFrom(...SNIFFER_STATES),
    heaterFault: fc.boolean(),
    run: fc.integer({ min: 0, max: 255 }),
    warmUpLeftMs: u32,
    deviceTimeMs: u32,
    burnInHours: fc.integer({ min: 0, max: 0xffff }),
  });

  it("comes back as it was sent, and so it does with octets and flags of a later version", () => {
    fc.assert(
      fc.property(statuses, fc.uint8Array({ maxLength: 7 }), fc.nat({ max: 127 }), (status, tail, flags) => {
        const sent = encodeStatus(status);
        expect(decodeStatus(sent)).toEqual({ ok: true, value: status });
        const later = Uint8Array.of(...sent, ...tail);
        later[1]! |= flags << 1;
        expect(decodeStatus(later)).toEqual({ ok: true, value: status });
      }),
    );
  });

  it("cut short is refused", () => {
    fc.assert(
      fc.property(statuses, fc.integer({ min: 0, max: 12 }), (status, length) => {
        expect(decodeStatus(encodeStatus(status).subarray(0, length))).toEqual({
          ok: false,
          error: { kind: "length", expected: 13, found: length },
        });
      }),
    );
  });

  it.each([
    ["run", 256],
    ["run", -1],
    ["warmUpLeftMs", 2 ** 32],
    ["deviceTimeMs", 2 ** 32],
    ["deviceTimeMs", 0.5],
    ["burnInHours", 65536],
  ])("our own code may not send a %s of %s", (field, value) => {
    const status = {
      state: "ready",
      heaterFault: false,
      run: 1,
      warmUpLeftMs: 0,
      deviceTimeMs: 0,
      burnInHours: 0,
    } as const;
    expect(() => encodeStatus({ ...status, [field]: value })).toThrow(RangeError);
  });
});

describe("control", () => {
  it("comes back as it was sent", () => {
    const commands: fc.Arbitrary<ControlCommand> = fc.oneof(
      fc.integer({ min: 1, max: 255 }).map((run) => ({ kind: "start" as const, run })),
      fc.constantFrom({ kind: "stop" as const }, { kind: "purge" as const }),
    );
    fc.assert(
      fc.property(commands, (command) => {
        expect(decodeControl(encodeControl(command))).toEqual({ ok: true, value: command });
      }),
    );
  });

  it("takes only what it would itself have sent", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 4 }), (value) => {
        const decoded = decodeControl(value);
        if (decoded.ok) expect(toHex(encodeControl(decoded.value))).toBe(toHex(value));
      }),
      { numRuns: 1000 },
    );
  });

  it.each(["", "0107aa", "0200", "0301"])("a command of a wrong length is refused: '%s'", (hex) => {
    const found = hex.length / 2;
    expect(decodeControl(fromHex(hex))).toEqual({ ok: false, error: { kind: "badLength", found } });
  });

  it("answers with ATT application errors, 0x80 to 0x9f (Bluetooth Core, Vol 3 Part F; value from memory)", () => {
    const codes = Object.values(CONTROL_ATT_ERRORS);
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code >= 0x80 && code <= 0x9f).toBe(true);
  });

  it("counts runs 1 to 255 and round, never 0, never the same twice running", () => {
    expect([0, 1, 254, 255].map(nextRun)).toEqual([1, 2, 255, 1]); // counted by hand
    expect(() => nextRun(256)).toThrow(RangeError);
    expect(() => encodeControl({ kind: "start", run: 0 })).toThrow(RangeError);
  });
});

describe("hexadecimal", () => {
  it("comes back as it was written", () => {
    fc.assert(
      fc.property(bytes, (value) => {
        expect(fromHex(toHex(value))).toEqual(value);
      }),
    );
  });

  it.each(["0", "0g", "0x00"])("refuses %s", (hex) => {
    expect(() => fromHex(hex)).toThrow(RangeError);
  });
});

it.each([-1, 1.5, 2 ** 32])("%s is no assigned number", (assigned) => {
  expect(() => canonicalUuid(assigned)).toThrow(RangeError);
});
