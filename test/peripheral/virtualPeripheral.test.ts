import { describe, expect, it } from "vitest";
import { createVirtualPeripheral } from "../../src/peripheral/virtualPeripheral.js";
import { assembleSweeps, beginSweeps } from "../../src/profile/assembleSweeps.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeStatus } from "../../src/profile/status.js";
import { CONTROL, LAYOUT, STATUS, SWEEP } from "../../src/profile/uuids.js";
import { parseFaults } from "../../src/peripheral/virtualFaults.js";
import { NIGHT_MARKET } from "../../src/virtual/dishes.js";
import type { Faults } from "../../src/virtual/faults.js";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import { fakeClock } from "./fakeClock.js";

async function warm(faults: Partial<Faults> = {}) {
  const clock = fakeClock();
  const peripheral = createVirtualPeripheral({ seed: 7, faults }, clock);
  const frames: Uint8Array[] = [];
  peripheral.onNotification(({ address, bytes }) => {
    if (address.characteristic === SWEEP.characteristic) frames.push(bytes);
  });
  peripheral.start();
  await clock.pass(DEMO_LAYOUT.warmUpMs + 1000);
  return { clock, peripheral, frames };
}

describe("the virtual sniffer on a real radio", () => {
  it("has every characteristic that it says it has", async () => {
    const { peripheral } = await warm();
    for (const address of peripheral.addresses) {
      const value = peripheral.read(address);
      expect(value.ok || value.error).not.toBe("absent");
    }
  });

  it("runs in real time, and meets the plate that is put under it", async () => {
    const { clock, peripheral, frames } = await warm();
    const status = peripheral.read(STATUS);
    expect(status.ok && decodeStatus(status.value)).toMatchObject({ value: { state: "ready" } });
    expect(peripheral.write(CONTROL, encodeControl({ kind: "start", run: 1 }))).toBe(0);
    const firstOhm = () => {
      let state = beginSweeps(1, DEMO_LAYOUT.channels.length);
      return frames.splice(0).flatMap((frame) => {
        const step = assembleSweeps(state, frame);
        state = step.state;
        return step.sweeps.map(({ ohm }) => ohm[0]!);
      });
    };
    await clock.pass(30_000);
    const clean = firstOhm();
    expect(clean).toHaveLength(30_000 / DEMO_LAYOUT.sweepPeriodMs);
    peripheral.serve(NIGHT_MARKET[0]!);
    await clock.pass(30_000);
    const overPlate = firstOhm();
    // A reducing vapour lowers an n-type film's resistance: check-values MX-01, common practice.
    expect(Math.min(...overPlate)).toBeLessThan(0.9 * Math.min(...clean));
  });

  it("has the faults that the command line names", async () => {
    const sweepsWith = async (...given: string[]) => {
      const faults = parseFaults(given);
      if (!faults.ok) throw new Error(faults.error);
      const { clock, peripheral, frames } = await warm(faults.value);
      peripheral.write(CONTROL, encodeControl({ kind: "start", run: 1 }));
      await clock.pass(60_000);
      let state = beginSweeps(1, DEMO_LAYOUT.channels.length);
      const sweeps = frames.flatMap((frame) => {
        const step = assembleSweeps(state, frame);
        state = step.state;
        return [...step.sweeps];
      });
      const layout = peripheral.read(LAYOUT);
      return { sweeps, frames: frames.length, status: peripheral.read(STATUS), layout };
    };
    const well = await sweepsWith();
    const lossy = await sweepsWith("lost=0.5");
    expect(lossy.frames / well.frames).toBeGreaterThan(0.3);
    expect(lossy.frames / well.frames).toBeLessThan(0.7);
    const stuck = await sweepsWith("stuck=2");
    expect(new Set(stuck.sweeps.map(({ ohm }) => ohm[1]))).toEqual(new Set([100_000]));
    expect(new Set(stuck.sweeps.map(({ ohm }) => ohm[0])).size).toBeGreaterThan(1);
    const garbled = await sweepsWith("garbled=1");
    expect([garbled.frames, garbled.sweeps.length]).toEqual([well.frames, 0]);
    const other = await sweepsWith("spread=2");
    const idOf = ({ layout }: typeof other) => layout.ok && decodeLayout(layout.value);
    expect(idOf(other)).toMatchObject({ value: { snifferId: "5e0d1e0000000002" } });
    expect(idOf(well)).toMatchObject({ value: { snifferId: "5e0d1e0000000001" } });
    const apart = Math.log(other.sweeps[9]!.ohm[0]! / well.sweeps[9]!.ohm[0]!);
    expect(Math.abs(apart)).toBeGreaterThan(0.05); // white noise is a tenth of that
    const { status } = await sweepsWith("heater=90");
    expect(status.ok && decodeStatus(status.value)).toMatchObject({ value: { heaterFault: true } });
  });
});
