import { describe, expect, it, vi } from "vitest";
import { chooseSniffer } from "../../src/radio/chooseSniffer.js";
import { makeInTurn } from "../../src/radio/inTurn.js";
import { RECONNECT_WAITS_MS, reconnectSniffer } from "../../src/radio/reconnectSniffer.js";
import { rememberedSniffers } from "../../src/radio/rememberedSniffers.js";
import { watchAvailability } from "../../src/radio/watchAvailability.js";
import { asDevice, FakeDevice } from "./fakeBluetooth.js";

const bluetoothWith = (parts: object): Bluetooth =>
  Object.assign(new EventTarget(), parts) as unknown as Bluetooth;
const wanted = { advertised: "sniffer", alsoUsed: ["battery"] };
const lost = () => new DOMException("out of range", "NetworkError");

describe("choosing", () => {
  it("asks for the advertised service and for leave to use the others", async () => {
    const requestDevice = vi.fn().mockResolvedValue("device");
    expect(await chooseSniffer(bluetoothWith({ requestDevice }), wanted)).toEqual({
      ok: true,
      value: "device",
    });
    expect(requestDevice).toHaveBeenCalledWith({
      filters: [{ services: ["sniffer"] }],
      optionalServices: ["battery"],
    });
  });

  it.each([
    // Web Bluetooth draft, request-devices steps: an empty choice, no user activation or a policy, a bad filter.
    ["NotFoundError", { kind: "noneChosen" }],
    ["SecurityError", { kind: "notAllowed" }],
    ["InvalidStateError", { kind: "unexpected", detail: "InvalidStateError: why" }],
  ])("%s", async (name, error) => {
    const requestDevice = () => Promise.reject(new DOMException("why", name));
    expect(await chooseSniffer(bluetoothWith({ requestDevice }), wanted)).toEqual({ ok: false, error });
  });

  it("is unsupported without Web Bluetooth, and a TypeError does not escape", async () => {
    expect(await chooseSniffer(undefined, wanted)).toEqual({ ok: false, error: { kind: "unsupported" } });
    const requestDevice = () => Promise.reject(new TypeError("bad filter"));
    expect(await chooseSniffer(bluetoothWith({ requestDevice }), wanted)).toEqual({
      ok: false,
      error: { kind: "unexpected", detail: "TypeError: bad filter" },
    });
  });
});

describe("reconnecting", () => {
  const waitsInto = (waited: number[]) => (ms: number) => Promise.resolve(void waited.push(ms));

  it("waits longer each time, until the sniffer is back", async () => {
    const device = new FakeDevice({});
    device.connectFailures.push(lost(), lost(), lost(), lost()); // two tries, two attempts each
    const waited: number[] = [];
    const link = await reconnectSniffer(asDevice(device), {
      waitsMs: [0, 10, 20, 40],
      wait: waitsInto(waited),
    });
    expect(link.ok).toBe(true);
    expect(waited).toEqual([0, 10, 20]);
  });

  it("gives up when the waits are used up, or when told to", async () => {
    const device = new FakeDevice({});
    device.connectFailures.push(...Array.from({ length: 20 }, lost));
    const answer = { ok: false, error: { kind: "lost" } };
    expect(await reconnectSniffer(asDevice(device), { waitsMs: [0, 1] })).toEqual(answer);
    expect(device.log).toHaveLength(4);
    const patience = new AbortController();
    setTimeout(() => patience.abort(), 5);
    const begun = performance.now();
    expect(await reconnectSniffer(asDevice(device), { waitsMs: [60_000], signal: patience.signal })).toEqual(
      answer,
    );
    expect(performance.now() - begun).toBeLessThan(5000);
    expect(device.log).toHaveLength(4);
  });

  it("told to give up while it waits, neither waits nor tries again", async () => {
    const device = new FakeDevice({});
    const patience = new AbortController();
    const waited: number[] = [];
    const wait = async (ms: number) => {
      waited.push(ms);
      patience.abort();
    };
    await reconnectSniffer(asDevice(device), { waitsMs: [1, 2, 3], signal: patience.signal, wait });
    expect(waited).toEqual([1]);
    expect(device.log).toEqual([]);
  });

  it("does not go on after an answer that will not mend itself", async () => {
    const device = new FakeDevice({});
    device.connectFailures.push(new DOMException("no", "SecurityError"));
    const link = await reconnectSniffer(asDevice(device), { waitsMs: [0, 1, 2] });
    expect(link).toMatchObject({ ok: false, error: { kind: "unexpected" } });
    expect(device.log).toEqual(["connect"]);
  });

  it("takes about half a minute of waiting by default, never less each time", () => {
    expect(RECONNECT_WAITS_MS.reduce((sum, ms) => sum + ms, 0)).toBe(31_500); // counted by hand
    expect([...RECONNECT_WAITS_MS].sort((left, right) => left - right)).toEqual(RECONNECT_WAITS_MS);
  });
});

describe("availability", () => {
  const answers = (...values: (boolean | Error)[]) => ({
    getAvailability: async () => {
      const value = values.shift();
      if (value instanceof Error) throw value;
      return value ?? false;
    },
  });
  const settled = () => new Promise((resolve) => setTimeout(resolve, 5));

  it("is told now and at each change, not twice the same", async () => {
    const bluetooth = bluetoothWith(answers(true, true, false));
    const told: string[] = [];
    const stop = watchAvailability(bluetooth, (availability) => told.push(availability));
    await settled();
    for (let i = 0; i < 2; i += 1) {
      bluetooth.dispatchEvent(new Event("availabilitychanged"));
      await settled();
    }
    expect(told).toEqual(["available", "unavailable"]);
    stop();
    bluetooth.dispatchEvent(new Event("availabilitychanged"));
    await settled();
    expect(told).toHaveLength(2);
  });

  it("is not told after watching stopped, though it was asked before", async () => {
    const told = vi.fn();
    watchAvailability(bluetoothWith(answers(true)), told)();
    await settled();
    expect(told).not.toHaveBeenCalled();
  });

  it("is unsupported without Web Bluetooth, unavailable if the browser will not say", async () => {
    const told: string[] = [];
    watchAvailability(undefined, (availability) => told.push(availability));
    watchAvailability(bluetoothWith(answers(new Error("no"))), (availability) => told.push(availability));
    await settled();
    expect(told).toEqual(["unsupported", "unavailable"]);
  });
});

describe("remembered sniffers", () => {
  it("are those the browser gives back", async () => {
    const bluetooth = bluetoothWith({ getDevices: () => Promise.resolve(["one", "two"]) });
    expect(await rememberedSniffers(bluetooth)).toEqual(["one", "two"]);
  });

  it("are none where the browser remembers nothing, refuses, or has no Bluetooth", async () => {
    expect(await rememberedSniffers(undefined)).toEqual([]);
    expect(await rememberedSniffers(bluetoothWith({}))).toEqual([]);
    expect(
      await rememberedSniffers(bluetoothWith({ getDevices: () => Promise.reject(new Error("no")) })),
    ).toEqual([]);
  });
});

it("tasks in turn go on after one that failed", async () => {
  const inTurn = makeInTurn();
  const log: string[] = [];
  const failing = inTurn(() => Promise.reject(new Error("first")));
  const second = inTurn(async () => log.push("second"));
  await expect(failing).rejects.toThrow("first");
  await second;
  expect(log).toEqual(["second"]);
});
