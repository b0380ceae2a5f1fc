import { describe, expect, it } from "vitest";
import { PRACTICE_FAULTS, type PracticeFault } from "../../src/kernel/practiceFault.js";
import { seededRandom } from "../../src/kernel/random.js";
import { NIGHT_MARKET, plateOf } from "../../src/virtual/dishes.js";
import { NO_FAULTS } from "../../src/virtual/faults.js";
import { beginMishaps, MISHAP_AFTER_MS, withPractice } from "../../src/virtual/practise.js";
import { advance, createVirtualSniffer, serve } from "../../src/virtual/virtualSniffer.js";
import {
  virtualSnifferId,
  isVirtualSniffer,
  VIRTUAL_SNIFFER_ID,
} from "../../src/virtual/virtualSnifferId.js";
import { started, statusIn, sweepsIn } from "./listening.js";

const plate = plateOf(NIGHT_MARKET[2]!, seededRandom(1));
const warm = () => createVirtualSniffer({ seed: 8, ageDays: 91, uptimeMs: 600_000 });

/** Half a minute over a plate, with what is chosen to go wrong. */
function sniffed(...chosen: PracticeFault[]) {
  const served = serve(started(withPractice(warm(), chosen), 1), plate);
  return advance(beginMishaps(served, chosen), 30_000);
}

describe("faults chosen for practice", () => {
  it("leave a sniffer with none of them as it was, and are gone without a trace", () => {
    expect(withPractice(warm(), [])).toEqual(warm());
    const all = withPractice(warm(), PRACTICE_FAULTS);
    expect(all.setup.faults).not.toEqual(NO_FAULTS);
    const worn = beginMishaps(all, PRACTICE_FAULTS);
    expect(withPractice(worn, [])).toEqual(warm());
  });

  it("begin over the plate where they happen in mid-sniff, with sweeps recorded before", () => {
    for (const fault of ["reboot", "heater"] as const) {
      // The eighth is cut off at its last reading, at sixteen seconds; counted by hand.
      expect(sweepsIn(sniffed(fault).notifications, 1)).toHaveLength(7);
    }
    expect(sweepsIn(sniffed().notifications, 1)).toHaveLength(15);
    expect(statusIn(sniffed("heater").notifications).at(-1)).toMatchObject({ heaterFault: true });
    expect(statusIn(sniffed("reboot").notifications).some(({ state }) => state === "warming")).toBe(true);
  });

  it("keep a heater that failed as it is, when the next plate is served", () => {
    const { sniffer } = sniffed("heater");
    expect(statusIn(advance(beginMishaps(sniffer, ["heater"]), 5000).notifications)).toEqual([]);
    expect(beginMishaps(sniffer, ["heater"]).setup.faults.heaterFailsAtMs).toBe(MISHAP_AFTER_MS);
  });

  it("lose a tenth of the sensitivity's logarithm with each plate, when the films are poisoned", () => {
    const before = warm().age.sensitivityLeft;
    const twice = beginMishaps(beginMishaps(warm(), ["poisoned"]), ["poisoned"]);
    expect(Math.log(before / twice.age.sensitivityLeft)).toBeCloseTo(0.2, 12); // counted by hand
  });
});

describe("units off the line", () => {
  it("are unlike, each the same every time, and known as virtual by their ids", () => {
    const unit = (unitNumber: number) => createVirtualSniffer({ seed: 8, faults: { unitNumber } });
    expect(unit(1)).toEqual(createVirtualSniffer({ seed: 8 }));
    expect(unit(2)).toEqual(unit(2));
    expect(unit(2).setup.unit).not.toEqual(unit(3).setup.unit);
    expect(unit(2).setup.layout.snifferId).toBe("5e0d1e0000000002");
    expect(virtualSnifferId(1)).toBe(VIRTUAL_SNIFFER_ID);
    expect([virtualSnifferId(0xffff_ffff), "00000000000000a1"].map(isVirtualSniffer)).toEqual([true, false]);
  });
});
