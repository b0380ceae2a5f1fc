// Facts of Bluetooth and Web Bluetooth from outside the project, each with the place it was read in.
import { describe, expect, it } from "vitest";
import { decodeBatteryLevel, encodeBatteryLevel } from "../../src/profile/battery.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import { crc16 } from "../../src/profile/crc16.js";
import {
  decodeHumidity,
  decodePressure,
  decodeTemperature,
  encodeHumidity,
  encodePressure,
  encodeTemperature,
} from "../../src/profile/environment.js";
import { encodeLayout } from "../../src/profile/layout.js";
import { encodeStatus } from "../../src/profile/status.js";
import { encodeSweep } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";

const ascii = (text: string) => Uint8Array.from(text, (character) => character.charCodeAt(0));

describe("GATT Specification Supplement: formats, ranges and 'value is not known'", () => {
  // Ranges and special values: the Supplement's text as quoted in the trouble-host 0.2 documentation (constants
  // TEMPERATURE, HUMIDITY, PRESSURE). Octets computed from the format independently, in Python.
  it.each([
    ["2909", 23.45],
    ["00fe", -5.12],
    ["4d95", -273.15],
    ["ff7f", 327.67],
    ["0080", null],
  ])("temperature %s is %s °C", (hex, temperatureC) => {
    expect(decodeTemperature(fromHex(hex))).toEqual({ ok: true, value: temperatureC });
    expect(toHex(encodeTemperature(temperatureC))).toBe(hex);
  });

  it.each([
    ["2e16", 56.78],
    ["1027", 100],
    ["0000", 0],
    ["ffff", null],
  ])("humidity %s is %s %%", (hex, humidityPct) => {
    expect(decodeHumidity(fromHex(hex))).toEqual({ ok: true, value: humidityPct });
    expect(toHex(encodeHumidity(humidityPct))).toBe(hex);
  });

  it("pressure 02760f00 is one standard atmosphere, 101 325 Pa", () => {
    expect(decodePressure(fromHex("02760f00"))).toEqual({ ok: true, value: 101325 });
    expect(toHex(encodePressure(101325))).toBe("02760f00");
  });

  it("pressure has no value that means 'not known': all ones are a number", () => {
    expect(decodePressure(fromHex("ffffffff"))).toEqual({ ok: true, value: 429496729.5 });
  });

  it.each([
    ["below absolute zero", decodeTemperature, "4c95", -27316],
    ["just above 'not known'", decodeTemperature, "0180", -32767],
    ["100.01 %", decodeHumidity, "1127", 10001],
    ["just below 'not known'", decodeHumidity, "feff", 65534],
    // org.bluetooth.characteristic.battery_level (SIG XML, 2011): 101 to 255 are reserved.
    ["101 % of a battery", decodeBatteryLevel, "65", 101],
    ["255 % of a battery", decodeBatteryLevel, "ff", 255],
  ])("%s is prohibited, never a number", (_what, decode, hex, raw) => {
    expect(decode(fromHex(hex))).toEqual({ ok: false, error: { kind: "prohibited", raw } });
  });

  it.each([0, 37, 100])("a battery at %s %%", (levelPct) => {
    expect(decodeBatteryLevel(encodeBatteryLevel(levelPct))).toEqual({ ok: true, value: levelPct });
  });
});

describe("assigned numbers", () => {
  it.each([
    // Web Bluetooth draft, BluetoothUUID.canonicalUUID, the draft's own example.
    [0xdeadbeef, "deadbeef-0000-1000-8000-00805f9b34fb"],
    [0x181a, "0000181a-0000-1000-8000-00805f9b34fb"],
  ])("%s in 128 bits", (assigned, uuid) => {
    expect(uuids.canonicalUuid(assigned)).toBe(uuid);
  });

  it.each([
    // Web Bluetooth registries, gatt_assigned_services.txt; SIG XML 2011; Nordic's bluetooth-numbers-database.
    ["Environmental Sensing", uuids.ENVIRONMENTAL_SENSING_SERVICE, 0x181a],
    ["Battery", uuids.BATTERY_SERVICE, 0x180f],
    ["Device Information", uuids.DEVICE_INFORMATION_SERVICE, 0x180a],
    ["Temperature", uuids.TEMPERATURE.characteristic, 0x2a6e],
    ["Humidity", uuids.HUMIDITY.characteristic, 0x2a6f],
    ["Pressure", uuids.PRESSURE.characteristic, 0x2a6d],
    ["Battery Level", uuids.BATTERY_LEVEL.characteristic, 0x2a19],
    ["Manufacturer Name", uuids.MANUFACTURER_NAME.characteristic, 0x2a29],
    ["Model Number", uuids.MODEL_NUMBER.characteristic, 0x2a24],
    ["Firmware Revision", uuids.FIRMWARE_REVISION.characteristic, 0x2a26],
    ["Hardware Revision", uuids.HARDWARE_REVISION.characteristic, 0x2a27],
  ])("%s", (_name, uuid, assigned) => {
    expect(Number.parseInt(uuid.slice(0, 8), 16)).toBe(assigned);
    expect(uuid.slice(8)).toBe("-0000-1000-8000-00805f9b34fb");
  });

  const all = Object.values(uuids).flatMap((value) =>
    typeof value === "object" && "characteristic" in value ? [value.service, value.characteristic] : [],
  );

  it("are written as Web Bluetooth demands: lower-case 8-4-4-4-12 (draft, BluetoothUUID.getService)", () => {
    for (const uuid of all)
      expect(uuid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/);
  });

  it("keep clear of what browsers block (Web Bluetooth registries, gatt_blocklist.txt): no serial number", () => {
    expect(all).not.toContain(uuids.canonicalUuid(0x2a25));
    expect(all).not.toContain(uuids.canonicalUuid(0x1812));
    expect(all).not.toContain(uuids.canonicalUuid(0x2a03));
  });

  it("use a random UUID (RFC 9562, version 4, variant 10) and never the Bluetooth base for what is our own", () => {
    const own = all.filter((uuid) => !uuid.endsWith("-0000-1000-8000-00805f9b34fb"));
    expect(new Set(own).size).toBe(5); // counted by hand: a service and four characteristics
    for (const uuid of own) expect(uuid).toMatch(/^.{8}-.{4}-4.{3}-[89ab].{3}-.{12}$/);
  });
});

it("CRC-16/IBM-3740 of '123456789' is 0x29b1", () => {
  // Source: G. Cook, Catalogue of parametrised CRC algorithms; Python: binascii.crc_hqx(b"123456789", 0xffff).
  expect(crc16(ascii("123456789"))).toBe(0x29b1);
});

describe("sizes of the default ATT_MTU of 23 (Bluetooth Core, Vol 3 Part F; value from memory)", () => {
  const longestSweep = {
    run: 255,
    counter: 65535,
    atMs: 4294967295,
    ohm: Array.from({ length: 64 }, () => 1e9),
  };

  it("a notification is at most 20 octets", () => {
    for (const frame of encodeSweep(longestSweep, 65535)) expect(frame.length).toBeLessThanOrEqual(20);
    const status = {
      state: "fault",
      heaterFault: true,
      run: 255,
      warmUpLeftMs: 4294967295,
      deviceTimeMs: 4294967295,
      burnInHours: 65535,
    } as const;
    expect(encodeStatus(status).length).toBeLessThanOrEqual(20);
  });

  it("an attribute is at most 512 octets, the longest layout included", () => {
    const layout = encodeLayout({
      profileVersion: { major: 1, minor: 0 },
      snifferId: "00a1b2c3d4e5f607",
      channels: Array.from({ length: 64 }, (_, i) => ({
        sensor: i >> 3,
        heaterC: 100 + 10 * (i & 7),
        dwellMs: 60,
      })),
      sweepPeriodMs: 4000,
      warmUpMs: 180000,
    });
    expect(layout.length).toBe(341); // counted by hand: 19 + 64 x 5 + 2
    expect(layout.length).toBeLessThanOrEqual(512);
  });
});
