import { expect, it } from "vitest";
import { decodeTemperature } from "../../src/profile/environment.js";
import { TEMPERATURE } from "../../src/profile/uuids.js";
import { parseSniff } from "../../src/sniff/sniffFile.js";
import { NIGHT_MARKET } from "../../src/virtual/dishes.js";
import { simulateSniff } from "../../src/virtual/simulateSniff.js";
import { advance, createVirtualSniffer } from "../../src/virtual/virtualSniffer.js";
import { bytesOf, started, sweepsIn } from "./listening.js";

const options = {
  seed: 12,
  dish: NIGHT_MARKET[2]!,
  cleanAirMs: 30_000,
  headspaceMs: 90_000,
  takenAt: "2026-08-07T18:00:00Z",
  id: "one",
  plate: "plate-one",
  occasion: "evening-one",
};

it("is a sniff that the sniff file takes, with what the cook knows of every group", () => {
  const sniff = simulateSniff(options);
  expect(parseSniff(structuredClone(sniff))).toEqual({ ok: true, value: sniff });
  expect(sniff.groups).toMatchObject({ meat: "present", fish: "absent", egg: "absent" });
  expect(sniff.dish).toBe("Clear beef broth with rice noodles");
});

it("holds 15 sweeps of clean air and 45 over the plate, two seconds apart", () => {
  // 30 s and 90 s at 2 s a sweep, counted by hand.
  const sniff = simulateSniff(options);
  expect(sniff.cleanAir.atMs).toEqual(Array.from({ length: 15 }, (_, i) => 2000 * i));
  expect(sniff.headspace.atMs).toEqual(Array.from({ length: 45 }, (_, i) => 2000 * i));
  expect(sniff.cleanAirAgeMs).toBe(2000);
});

it("gives the numbers that an app listening to the same sniffer gets", () => {
  const sniff = simulateSniff({ ...options, ageDays: 21 });
  const made = started(createVirtualSniffer({ seed: 12, ageDays: 21, uptimeMs: 600_000 }), 1);
  let sniffer = made;
  const heard = [];
  for (let ms = 0; ms < 30_000; ms += 100) {
    const step = advance(sniffer, 100);
    sniffer = step.sniffer;
    heard.push(...step.notifications);
  }
  expect(sweepsIn(heard, 1).map((sweep) => sweep.ohm)).toEqual(sniff.cleanAir.ohm);
  const temperature = decodeTemperature(bytesOf(heard, TEMPERATURE).at(-1)!);
  expect(temperature).toEqual({ ok: true, value: sniff.air.cleanAir.temperatureC });
});

it("stays near clean air over a dish that gives nothing off", () => {
  const nothing = { ...options.dish, recipe: {}, hot: false };
  const sniff = simulateSniff({ ...options, dish: nothing });
  const clean = sniff.cleanAir.ohm.at(-1)!;
  sniff.headspace.ohm.at(-1)!.forEach((ohm, channel) => {
    expect(Math.abs(Math.log(ohm / clean[channel]!))).toBeLessThan(0.12);
  });
});

it("repeats for the same seed and differs for another", () => {
  expect(simulateSniff(options)).toEqual(simulateSniff(options));
  expect(simulateSniff(options).headspace).not.toEqual(simulateSniff({ ...options, seed: 13 }).headspace);
});

it("brings steam: the case is warmer and more humid after a hot dish", () => {
  const { air } = simulateSniff(options);
  expect(air.headspace.temperatureC).toBeGreaterThan(air.cleanAir.temperatureC! + 0.5);
  expect(air.headspace.humidityPct).toBeGreaterThan(air.cleanAir.humidityPct! + 3);
  expect(air.headspace.pressurePa).toBe(air.cleanAir.pressurePa);
});

it("refuses a phase that holds no whole sweep", () => {
  expect(() => simulateSniff({ ...options, cleanAirMs: 1000 })).toThrow(RangeError);
  expect(() => simulateSniff({ ...options, headspaceMs: 1000 })).toThrow(RangeError);
});

it("leaves out a sweep that began before the plate came and ended after", () => {
  const sniff = simulateSniff({ ...options, cleanAirMs: 9000, headspaceMs: 9000 });
  expect(sniff.cleanAir.atMs).toEqual([0, 2000, 4000, 6000]); // the sweep from 8 s to 10 s is mixed
  expect(sniff.headspace.atMs).toEqual([0, 2000, 4000, 6000]); // from 10 s to 18 s
  expect(sniff.cleanAirAgeMs).toBe(4000);
});
