// The virtual sniffer's link, with faults for practice: what a fault takes away, and that it is given back.
import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { layVirtualTable } from "../../src/app/virtualTable.js";
import type { PracticeFault } from "../../src/kernel/practiceFault.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeStatus } from "../../src/profile/status.js";
import { CONTROL, LAYOUT, STATUS, SWEEP } from "../../src/profile/uuids.js";

/** As many device milliseconds as real ones. */
const SPEED = 1;

beforeEach(() => void vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "performance"] }));
afterEach(() => void vi.useRealTimers());

function laid(...chosen: PracticeFault[]) {
  const faults = signal<readonly PracticeFault[]>(chosen);
  return { faults, table: layVirtualTable("practice", 5, faults, SPEED) };
}

async function listening(table: ReturnType<typeof layVirtualTable>) {
  const link = table.open();
  let frames = 0;
  let losses = 0;
  link.onLost(() => (losses += 1));
  await link.subscribe(SWEEP, () => (frames += 1));
  const status = async () => {
    const value = await link.read(STATUS);
    const read = value.ok ? decodeStatus(value.value) : null;
    return read?.ok ? read.value : null;
  };
  return { link, status, heard: () => ({ frames, losses }) };
}

const start = encodeControl({ kind: "start", run: 1 });

describe("the virtual sniffer's link", () => {
  it("breaks over the plate when the link is to be lost, and another reaches the same run after the time that passed", async () => {
    const { table } = laid("link");
    const { link, status, heard } = await listening(table);
    expect((await link.write(CONTROL, start)).ok).toBe(true);
    vi.advanceTimersByTime(10_000);
    expect(heard().losses).toBe(0);
    table.serve("beef-broth");
    vi.advanceTimersByTime(16_100);
    expect(heard().losses).toBe(1);
    const before = heard().frames;
    vi.advanceTimersByTime(3_000);
    expect(heard()).toEqual({ frames: before, losses: 1 });
    expect(await link.read(STATUS)).toEqual({ ok: false, error: { kind: "lost" } });
    expect(await status()).toBeNull();

    const again = await listening(table);
    const told = await again.status();
    expect(told).toMatchObject({ state: "measuring", run: 1 });
    expect(Math.abs((told?.deviceTimeMs ?? 0) - 29_100)).toBeLessThan(300);
    vi.advanceTimersByTime(20_000);
    expect(again.heard().frames).toBeGreaterThan(30);
    expect(again.heard().losses).toBe(0); // once a plate
  });

  it("follows the choice while it runs, and is sound again once nothing is chosen", async () => {
    const { table, faults } = laid();
    const { link, heard } = await listening(table);
    await link.write(CONTROL, start);
    const framesOf = (forMs: number) => {
      const before = heard().frames;
      vi.advanceTimersByTime(forMs);
      return heard().frames - before;
    };
    expect(framesOf(40_000)).toBe(80); // 20 sweeps of 4 frames, counted by hand
    faults.value = ["lost"];
    expect(framesOf(40_000)).toBeLessThan(76);
    faults.value = [];
    expect(framesOf(40_000)).toBe(80);
  });

  it("is another unit, by its id too, where another sniffer was chosen before it was laid", async () => {
    const idOf = async (...chosen: PracticeFault[]) => {
      const value = await laid(...chosen)
        .table.open()
        .read(LAYOUT);
      const layout = value.ok ? decodeLayout(value.value) : null;
      return layout?.ok ? layout.value.snifferId : null;
    };
    expect([await idOf(), await idOf("spread")]).toEqual(["5e0d1e0000000001", "5e0d1e0000000002"]);
  });
});
