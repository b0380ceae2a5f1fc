import { describe, expect, it } from "vitest";
import { createVirtualPeripheral } from "../../src/peripheral/virtualPeripheral.js";
import { assembleSweeps, beginSweeps } from "../../src/profile/assembleSweeps.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeStatus } from "../../src/profile/status.js";
import { CONTROL, STATUS, SWEEP } from "../../src/profile/uuids.js";
import { NIGHT_MARKET } from "../../src/virtual/dishes.js";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import { fakeClock } from "./fakeClock.js";

async function warm() {
  const clock = fakeClock();
  const peripheral = createVirtualPeripheral(7, clock);
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
});
