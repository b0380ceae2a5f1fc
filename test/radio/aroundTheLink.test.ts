import { describe, expect, it, vi } from "vitest";
import { chooseSniffer } from "../../src/radio/chooseSniffer.js";
import { makeInTurn } from "../../src/radio/inTurn.js";
import { rememberedSniffers } from "../../src/radio/rememberedSniffers.js";
import { watchAvailability } from "../../src/radio/watchAvailability.js";

const bluetoothWith = (parts: object): Bluetooth =>
  Object.assign(new EventTarget(), parts) as unknown as Bluetooth;
const wanted = { advertised: "sniffer", alsoUsed: ["battery"] };

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

  it("is told what was asked last, though an older answer comes later", async () => {
    const answer: ((value: boolean) => void)[] = [];
    const getAvailability = () => new Promise<boolean>((resolve) => answer.push(resolve));
    const bluetooth = bluetoothWith({ getAvailability });
    const told: string[] = [];
    watchAvailability(bluetooth, (availability) => told.push(availability));
    bluetooth.dispatchEvent(new Event("availabilitychanged"));
    expect(answer).toHaveLength(2);
    answer[1]?.(true);
    await settled();
    answer[0]?.(false);
    await settled();
    expect(told).toEqual(["available"]);
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
