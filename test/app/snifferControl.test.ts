import { describe, expect, it } from "vitest";
import type { CheckEvent } from "../../src/flows/checkState.js";
import type { CharacteristicAddress, Link, LinkError } from "../../src/kernel/link.js";
import { err, ok, type Result } from "../../src/kernel/result.js";
import { createSnifferControl, type SnifferSource } from "../../src/app/snifferControl.js";
import { toHex } from "../../src/profile/bytes.js";
import { encodeTemperature } from "../../src/profile/environment.js";
import { BATTERY_LEVEL, LAYOUT, STATUS, SWEEP, TEMPERATURE } from "../../src/profile/uuids.js";
import type { Faults } from "../../src/virtual/faults.js";
import { advance, createVirtualSniffer, readValue, writeValue } from "../../src/virtual/virtualSniffer.js";

/** A link to a virtual sniffer whose time moves only when the test says so. */
function benchLink(withhold: readonly CharacteristicAddress[] = [], faults: Partial<Faults> = {}) {
  let sniffer = createVirtualSniffer({ seed: 5, faults });
  let lost: () => void = () => undefined;
  const listeners = new Map<string, (bytes: Uint8Array) => void>();
  const written: Uint8Array[] = [];
  const absent = (address: CharacteristicAddress): Result<never, LinkError> =>
    err({ kind: "absent", address });
  const link: Link = {
    name: "bench",
    read: (address) => {
      const value = withhold.includes(address) ? absent(address) : readValue(sniffer, address);
      return Promise.resolve(value.ok ? ok(value.value) : absent(address));
    },
    write: (address, bytes) => {
      written.push(bytes);
      const answer = writeValue(sniffer, address, bytes);
      sniffer = answer.sniffer;
      return Promise.resolve(answer.attError === 0 ? ok(undefined) : err({ kind: "refused", detail: "no" }));
    },
    subscribe: (address, onBytes) => {
      if (withhold.includes(address)) return Promise.resolve(absent(address));
      listeners.set(address.characteristic, onBytes);
      return Promise.resolve(ok(undefined));
    },
    onLost: (listener) => {
      lost = listener;
    },
    close: () => listeners.clear(),
  };
  return {
    link,
    written,
    /** What the radio delivers, whatever the sniffer sent. */
    deliver: (address: CharacteristicAddress, bytes: Uint8Array) =>
      listeners.get(address.characteristic)?.(bytes),
    read: (address: CharacteristicAddress) => readValue(sniffer, address),
    lose: () => lost(),
    pass: (ms: number) => {
      const step = advance(sniffer, ms);
      sniffer = step.sniffer;
      step.notifications.forEach(({ address, bytes }) => listeners.get(address.characteristic)?.(bytes));
    },
  };
}

const sourceOf = (dials: (() => Result<Link, { kind: "unreachable" }>)[]): SnifferSource => ({
  virtual: false,
  choose: () => {
    let dialled = 0;
    return Promise.resolve(
      ok({
        name: "bench",
        deviceId: null,
        dial: () => Promise.resolve((dials[dialled++] ?? (() => err({ kind: "unreachable" })))()),
      }),
    );
  },
});

describe("a sniffer that is paired", () => {
  it("is ready once its layout is read, and its sweeps become check events", async () => {
    const bench = benchLink();
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    control.onCheckEvent((event) => events.push(event));
    await control.pair(sourceOf([() => ok(bench.link)]));
    expect(control.state.value).toMatchObject({ kind: "ready", sniffer: { name: "bench" } });
    expect(await control.startSweeps()).toBe("taken");
    bench.pass(10_000);
    expect(events.filter((event) => event.kind === "sweep").length).toBeGreaterThanOrEqual(3);
  });

  it("believes no fault that one wrong octet told, and tells one that stands when asked again", async () => {
    const bench = benchLink();
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    control.onCheckEvent((event) => events.push(event));
    await control.pair(sourceOf([() => ok(bench.link)]));
    const sound = bench.read(STATUS);
    if (!sound.ok) throw new Error("the bench tells its status");
    const twisted = Uint8Array.from(sound.value, (octet, i) => (i === 1 ? octet ^ 1 : octet)); // PROFILE.md 5: flags
    bench.deliver(STATUS, twisted);
    await Promise.resolve();
    expect(events.filter(({ kind }) => kind === "interrupted")).toEqual([]);
    expect(control.state.value).toMatchObject({ sniffer: { status: { heaterFault: false } } });
    const real = benchLink([], { heaterFailsAtMs: 2000 });
    await control.pair(sourceOf([() => ok(real.link)]));
    real.pass(3000);
    await Promise.resolve();
    expect(events).toContainEqual({ kind: "interrupted", cause: "snifferFault" });
  });

  it("tells a fault before what came after it, so that no finding overtakes it", async () => {
    const bench = benchLink([], { heaterFailsAtMs: 70_000 });
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    control.onCheckEvent((event) => events.push(event));
    await control.pair(sourceOf([() => ok(bench.link)]));
    await control.startSweeps();
    bench.pass(69_000);
    const before = events.filter(({ kind }) => kind === "sweep").length;
    bench.pass(2000);
    bench.deliver(TEMPERATURE, encodeTemperature(31));
    expect(events.some(({ kind }) => kind === "interrupted")).toBe(false); // it is being asked again
    await Promise.resolve();
    const at = events.findIndex(({ kind }) => kind === "interrupted");
    expect(events[at]).toEqual({ kind: "interrupted", cause: "snifferFault" });
    const ofSweeps = events.slice(0, at).filter(({ kind }) => kind === "sweep").length;
    expect(ofSweeps - before).toBeLessThanOrEqual(1); // a second of 2 s a sweep
    expect(new Set(events.slice(at + 1).map(({ kind }) => kind))).toEqual(new Set(["air"]));
    expect(events.at(-1)).toEqual({ kind: "air", reading: { temperatureC: 31 } });
  });

  it("stops a check at its start where the fault is known already, and commands no run", async () => {
    const bench = benchLink([], { heaterFailsAtMs: 2000 });
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    await control.pair(sourceOf([() => ok(bench.link)]));
    bench.pass(3000);
    await new Promise((resolve) => setTimeout(resolve)); // it is told, and nobody listens yet
    control.onCheckEvent((event) => events.push(event));
    expect(await control.startSweeps()).toBe("refused");
    expect(events).toEqual([{ kind: "interrupted", cause: "snifferFault" }]);
    expect(bench.written.map(toHex)).toEqual(["02"]); // PROFILE.md 6: stop
  });

  it("loses nothing of what came while a fault was asked for again and the link went", async () => {
    const bench = benchLink([], { heaterFailsAtMs: 70_000 });
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    control.onCheckEvent((event) => events.push(event));
    await control.pair(sourceOf([() => ok(bench.link)]));
    bench.pass(71_000);
    bench.deliver(TEMPERATURE, encodeTemperature(31));
    bench.lose();
    await Promise.resolve();
    expect(events.slice(-2)).toEqual([
      { kind: "air", reading: { temperatureC: 31 } },
      { kind: "interrupted", cause: "linkLost" },
    ]);
  });

  it("tells the fault of a sniffer that comes back with one", async () => {
    const bench = benchLink([], { heaterFailsAtMs: 70_000 });
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    control.onCheckEvent((event) => events.push(event));
    await control.pair(sourceOf([() => ok(bench.link), () => ok(bench.link)]));
    await control.startSweeps();
    bench.pass(65_000);
    bench.lose();
    bench.pass(10_000);
    await control.reconnect();
    expect(events.slice(-2)).toMatchObject([
      { kind: "linkBack" },
      { kind: "interrupted", cause: "snifferFault" },
    ]);
  });

  it("works without a battery service, and says that the charge is not known", async () => {
    const control = createSnifferControl();
    await control.pair(sourceOf([() => ok(benchLink([BATTERY_LEVEL]).link)]));
    expect(control.state.value).toMatchObject({ kind: "ready", sniffer: { batteryPct: null } });
  });

  it.each([
    ["a layout", LAYOUT],
    ["a status", STATUS],
    ["sweeps", SWEEP],
  ])("is no sniffer without %s", async (_what, address) => {
    const control = createSnifferControl();
    await control.pair(sourceOf([() => ok(benchLink([address]).link)]));
    expect(control.state.value).toEqual({ kind: "failed", failure: { kind: "notASniffer" } });
  });

  it("stays as it was when the user closes the chooser", async () => {
    const bench = benchLink();
    const control = createSnifferControl();
    await control.pair(sourceOf([() => ok(bench.link)]));
    await control.pair({ virtual: false, choose: () => Promise.resolve(ok(null)) });
    expect(control.state.value.kind).toBe("ready");
  });

  it("tells a running check that the link is lost, and can be connected to again", async () => {
    const [first, second] = [benchLink(), benchLink()];
    const control = createSnifferControl();
    const events: CheckEvent[] = [];
    control.onCheckEvent((event) => events.push(event));
    await control.pair(
      sourceOf([() => ok(first.link), () => err({ kind: "unreachable" }), () => ok(second.link)]),
    );
    first.lose();
    expect(control.state.value).toMatchObject({ kind: "lost", failure: null });
    expect(events).toContainEqual({ kind: "interrupted", cause: "linkLost" });
    await control.reconnect();
    expect(control.state.value).toMatchObject({ kind: "lost", failure: { kind: "unreachable" } });
    await control.reconnect();
    expect(control.state.value).toMatchObject({ kind: "ready" });
  });

  it("gives each start another run number, so that late sweeps of the last one are told apart", async () => {
    const bench = benchLink();
    const control = createSnifferControl();
    await control.pair(sourceOf([() => ok(bench.link)]));
    await control.startSweeps();
    await control.startSweeps();
    const starts = bench.written.filter((bytes) => bytes[0] === 1);
    expect(starts.map((bytes) => bytes[1])).toEqual([1, 2]);
  });

  it("starts again right after a purge, which it breaks off", async () => {
    const bench = benchLink();
    const control = createSnifferControl();
    await control.pair(sourceOf([() => ok(bench.link)]));
    await control.startSweeps();
    await control.purge();
    expect(await control.startSweeps()).toBe("taken");
  });
});
