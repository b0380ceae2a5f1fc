// Holds each example of PROFILE.md against the code. The octets there were made with Python's struct.pack and
// binascii.crc_hqx, not with the code under test.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Result } from "../../src/kernel/result.js";
import { assembleSweeps, beginSweeps, finishSweeps } from "../../src/profile/assembleSweeps.js";
import { decodeBatteryLevel, encodeBatteryLevel } from "../../src/profile/battery.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import { attErrorOf, decodeControl, encodeControl, type ControlError } from "../../src/profile/control.js";
import { crc16 } from "../../src/profile/crc16.js";
import { decodeText, encodeText } from "../../src/profile/deviceInformation.js";
import {
  decodeHumidity,
  decodePressure,
  decodeTemperature,
  encodeHumidity,
  encodePressure,
  encodeTemperature,
} from "../../src/profile/environment.js";
import { decodeLayout, encodeLayout } from "../../src/profile/layout.js";
import { decodeStatus, encodeStatus } from "../../src/profile/status.js";
import { decodeSweepFrame, encodeSweep, type Sweep } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";

interface Example {
  codec: string;
  way?: "decode";
  hex: string;
  value: unknown;
  error?: unknown;
  attError?: number;
  firstSequence: number;
  run: number;
  channelCount: number;
  frames: string[];
  sweeps: unknown;
  faults: unknown;
}

interface Codec {
  decode: (bytes: Uint8Array) => Result<unknown, unknown>;
  encode?: (value: never) => Uint8Array;
}

const codecs: Record<string, Codec> = {
  layout: { decode: decodeLayout, encode: encodeLayout },
  status: { decode: decodeStatus, encode: encodeStatus },
  control: { decode: decodeControl, encode: encodeControl },
  sweepFrame: { decode: decodeSweepFrame },
  temperature: { decode: decodeTemperature, encode: encodeTemperature },
  humidity: { decode: decodeHumidity, encode: encodeHumidity },
  pressure: { decode: decodePressure, encode: encodePressure },
  batteryLevel: { decode: decodeBatteryLevel, encode: encodeBatteryLevel },
  text: { decode: decodeText, encode: encodeText },
};

const profile = readFileSync(new URL("../../src/profile/PROFILE.md", import.meta.url), "utf8");
const examples = [...profile.matchAll(/```json example\n(.*?)```/gs)].map(
  (match) => JSON.parse(match[1]!) as Example,
);
const named = (codec: (name: string) => boolean) =>
  examples
    .filter((example) => codec(example.codec))
    .map((example) => [`${example.codec} ${example.hex ?? example.frames.join(", ")}`, example] as const);

it("shows every codec at work and at its limits", () => {
  const shown = new Set(examples.map((example) => example.codec));
  expect([...shown].sort()).toEqual([...Object.keys(codecs), "assembly", "crc", "sweep"].sort());
  const refused = new Set(examples.filter(({ error }) => error !== undefined).map(({ codec }) => codec));
  for (const codec of ["layout", "status", "control", "sweepFrame", "temperature", "humidity"]) {
    expect(refused).toContain(codec);
  }
});

describe("values and their octets", () => {
  it.each(named((codec) => codec in codecs))("%s", (_name, example) => {
    const { decode, encode } = codecs[example.codec]!;
    const decoded = decode(fromHex(example.hex));
    if (example.error !== undefined) {
      expect(decoded).toEqual({ ok: false, error: example.error });
      return;
    }
    expect(decoded).toEqual({ ok: true, value: example.value });
    if (encode !== undefined && example.way !== "decode") {
      expect(toHex(encode(example.value as never))).toBe(example.hex.replaceAll(" ", ""));
    }
  });

  it.each(named((codec) => codec === "crc"))("%s", (_name, example) => {
    expect(crc16(fromHex(example.hex))).toBe(example.value);
  });
});

it.each(named((codec) => codec === "control").filter(([, { error }]) => error !== undefined))(
  "answers the bad command %s with its ATT error",
  (_name, example) => {
    expect(example.attError).toBeDefined();
    expect(attErrorOf(example.error as ControlError)).toBe(example.attError);
  },
);

it.each(named((codec) => codec === "sweep"))("%s", (_name, example) => {
  const frames = encodeSweep(example.value as Sweep, example.firstSequence);
  expect(frames.map(toHex)).toEqual(example.frames.map((hex) => hex.replaceAll(" ", "")));
});

it.each(named((codec) => codec === "assembly"))("%s", (_name, example) => {
  let state = beginSweeps(example.run, example.channelCount);
  const steps = example.frames.map((hex) => {
    const step = assembleSweeps(state, fromHex(hex));
    state = step.state;
    return step;
  });
  steps.push(finishSweeps(state));
  expect(steps.flatMap(({ sweeps }) => sweeps)).toEqual(example.sweeps);
  expect(steps.flatMap(({ faults }) => faults)).toEqual(example.faults);
});

it("lists the same UUIDs as the code", () => {
  const addresses = Object.values(uuids).filter(
    (value): value is typeof uuids.LAYOUT => typeof value === "object" && "characteristic" in value,
  );
  expect(addresses).toHaveLength(12); // counted by hand: four of the sniffer's own, three, one and four
  const rows = profile.split("\n").map((line) => line.split("|").map((cell) => cell.trim()));
  const written = (uuid: string) =>
    uuid.startsWith("0000") ? `0x${uuid.slice(4, 8).toUpperCase()}` : `\`${uuid}\``;
  for (const { service, characteristic } of addresses) {
    const serviceName = rows.find((cells) => cells[2] === written(service))?.[1];
    const row = rows.find((cells) => cells[3] === written(characteristic));
    expect(serviceName).toBeTruthy();
    expect(row?.[2]).toBe(serviceName);
    expect(uuids.ALL_SERVICES).toContain(service);
  }
});
