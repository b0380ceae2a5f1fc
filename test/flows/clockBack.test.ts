import fc from "fast-check";
import { expect, it } from "vitest";
import type { CheckEvent } from "../../src/flows/checkState.js";
import { nothingGathered, sniffFrom } from "../../src/flows/gathered.js";
import { beginRun, takeBytes } from "../../src/flows/snifferBytes.js";
import { encodeSweep } from "../../src/profile/sweepFrame.js";
import { SWEEP } from "../../src/profile/uuids.js";
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
