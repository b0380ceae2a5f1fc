import fc from "fast-check";
import { expect, it } from "vitest";
import type { CheckEvent } from "../../src/flows/checkState.js";
import { nothingGathered, sniffFrom } from "../../src/flows/gathered.js";
import { beginRun, needsSecondLook, takeBytes } from "../../src/flows/snifferBytes.js";
import { encodeSweep } from "../../src/profile/sweepFrame.js";
import { encodeStatus, type SnifferStatus } from "../../src/profile/status.js";
import { STATUS, SWEEP, TEMPERATURE } from "../../src/profile/uuids.js";
import { SNIFFER } from "../browser/gallery/fixtures/sniffers.js";
import { SUBJECT } from "./subject.js";

/** What a check hears of sweeps of these times and counters, one frame each. */
function heard(made: readonly (readonly [atMs: number, counter: number])[]): CheckEvent[] {
  let sniffer = beginRun({
    ...SNIFFER,
    lastRun: 0,
    layout: { ...SNIFFER.layout, channels: SUBJECT.channels },
  });
  return made.flatMap(([atMs, counter]) => {
    const [frame] = encodeSweep({ run: 1, counter, atMs, ohm: [50_000 + counter] }, counter);
    const step = takeBytes(sniffer, SWEEP, frame ?? new Uint8Array());
    sniffer = step.sniffer;
    return [...step.events];
  });
}

const BEFORE = [60_000, 62_000, 64_000].map((atMs, counter) => [atMs, counter] as const);

// PROFILE.md 8: device time counts from switching on, so it goes back only where the sniffer began anew.
it.each([
  ["with its counters, as after loss of power", [1000, 0]],
  ["alone", [1000, 3]],
] as const)(
  "a clock that goes back %s stops the check, and no sweep of it comes before",
  (_how, afterwards) => {
    const events = heard([...BEFORE, afterwards]);
    const stop = events.findIndex(({ kind }) => kind === "interrupted");
    expect(events[stop]).toEqual({ kind: "interrupted", cause: "snifferRestarted" });
    const times = events.slice(0, stop).map((event) => (event.kind === "sweep" ? event.sweep.atMs : null));
    expect(times).toEqual([60_000, 62_000, 64_000]);
  },
);

it("a device clock that passes 2^32 ms, as it does after 49.7 days, stops nothing", () => {
  const events = heard([-4000, -2000, 0, 2000].map((ms, counter) => [2 ** 32 + ms, counter]));
  expect(events.map(({ kind }) => kind)).toEqual(["sweep", "sweep", "sweep", "sweep"]);
});

it("clean air is as old as the clock says, and none where no clock tells its age", () => {
  const time = fc.integer({ min: 0, max: 200_000 });
  fc.assert(
    fc.property(time, time, (clean, over) => {
      const gathered = {
        ...nothingGathered(SUBJECT),
        cleanAir: [{ atMs: clean, ohm: [50_000] }],
        headspace: [{ atMs: over, ohm: [20_000] }],
      };
      const sniff = sniffFrom(gathered);
      expect(sniff?.cleanAirAgeMs).toBe(over >= clean ? over - clean : undefined);
      expect(sniff?.cleanAir === undefined).toBe(over < clean);
    }),
  );
});

/** A run of ours under way at ten minutes after switching on. */
const UNDER_WAY = beginRun({
  ...SNIFFER,
  lastRun: 0,
  status: { ...SNIFFER.status!, state: "measuring", run: 1, deviceTimeMs: 600_000 },
});
const told = (change: Partial<SnifferStatus>) =>
  encodeStatus({ ...UNDER_WAY.status!, deviceTimeMs: 601_000, ...change });
const BOOTED = { state: "warming", run: 0, warmUpLeftMs: 59_000, deviceTimeMs: 1000 } as const;

// PROFILE.md 5 and 8: run is 0 if there was none since switching on, and device time counts from then.
it("a status of a sniffer that was switched on anew stops the check at once, and it is counted", () => {
  const { sniffer, events } = takeBytes(UNDER_WAY, STATUS, told(BOOTED));
  expect(events).toEqual([{ kind: "interrupted", cause: "snifferRestarted" }]);
  expect([sniffer.health.restarts, sniffer.recent, sniffer.assembly]).toEqual([1, [], null]);
});

it.each([
  ["knows of no run yet, with a clock that goes on", { run: 0, state: "warming", warmUpLeftMs: 5 }],
  ["is of the run, with a clock that passed 2^32", { deviceTimeMs: 2 ** 31 + 500_000 }],
] as const)("a status that %s stops nothing", (_what, change) => {
  const before = { ...UNDER_WAY, status: { ...UNDER_WAY.status!, deviceTimeMs: 2 ** 31 + 400_000 } };
  const at = "run" in change ? UNDER_WAY : before;
  expect(takeBytes(at, STATUS, told(change)).events.map(({ kind }) => kind)).toEqual(["warmUp"]);
});

it("a status is read once more where one wrong octet would stop a check or begin the warm-up anew", () => {
  const twice = (bytes: Uint8Array) => needsSecondLook(UNDER_WAY, STATUS, bytes);
  expect(twice(told({}))).toBe(false);
  expect(twice(told({ heaterFault: true }))).toBe(true);
  expect(twice(told({ state: "fault" }))).toBe(true);
  expect(twice(told(BOOTED))).toBe(true);
  expect(twice(told({ warmUpLeftMs: 1 }))).toBe(true);
  expect(twice(Uint8Array.from(told({}), (octet, i) => (i === 0 ? 99 : octet)))).toBe(true);
  expect(needsSecondLook(UNDER_WAY, TEMPERATURE, told({ heaterFault: true }))).toBe(false);
});
