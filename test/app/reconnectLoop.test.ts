import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createReconnectLoop } from "../../src/app/reconnectLoop.js";
import { TRY_LIMIT_MS } from "../../src/flows/reconnectFlow.js";
import { MOST_TRIES } from "../../src/flows/reconnectState.js";
import type { SnifferFailure, SnifferState } from "../../src/flows/snifferState.js";
import type { Availability } from "../../src/radio/watchAvailability.js";
import { LOST, READY, SNIFFER } from "../browser/gallery/fixtures/sniffers.js";

const UNREACHABLE: SnifferFailure = { kind: "unreachable" };

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** A sniffer that answers each try as the test says; "never" leaves it open until it is given up. */
function bench(answers: (SnifferFailure | "back" | "never")[]) {
  const state = signal<SnifferState>(READY);
  const inSight = signal(true);
  const availability = signal<Availability>("available");
  const tries: AbortSignal[] = [];
  const reconnect = async (patience?: AbortSignal) => {
    if (patience === undefined) throw new Error("a try needs a way to end it");
    tries.push(patience);
    const answer = answers.shift() ?? UNREACHABLE;
    if (answer === "back") state.value = READY;
    else if (answer === "never") await new Promise((resolve) => patience.addEventListener("abort", resolve));
    else state.value = { kind: "lost", sniffer: SNIFFER, failure: answer };
  };
  const control = createReconnectLoop({
    sniffers: { state, reconnect },
    availability,
    inSight,
    random: () => 0.5,
  });
  return { state, inSight, availability, tries, control };
}

const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);

describe("a sniffer that was lost", () => {
  it("is tried by itself until it is back, and then no more", async () => {
    const { state, tries, control } = bench([UNREACHABLE, UNREACHABLE, "back"]);
    state.value = LOST;
    await pass(60_000);
    expect(tries).toHaveLength(3);
    expect([state.value.kind, control.state.value.kind]).toEqual(["ready", "off"]);
  });

  it("counts the seconds down until the next try", async () => {
    const { state, control } = bench([UNREACHABLE, UNREACHABLE, UNREACHABLE, UNREACHABLE]);
    state.value = LOST;
    await pass(500 + 1000 + 2000); // three tries are over, the fourth is due 3 s later: 0.75 x 4 s
    expect(control.secondsLeft.value).toBe(3);
    await pass(1200);
    expect(control.secondsLeft.value).toBeLessThan(3);
  });

  it("is given up after the last try; a tap begins again", async () => {
    const { state, tries, control } = bench([]);
    state.value = LOST;
    await pass(600_000);
    expect(tries).toHaveLength(MOST_TRIES);
    expect(control.state.value).toEqual({ kind: "gaveUp", why: "bound" });
    control.tryNow();
    await pass(0);
    expect(tries).toHaveLength(MOST_TRIES + 1);
  });

  it("is not tried again where it answered that it speaks another profile", async () => {
    const { state, tries, control } = bench([{ kind: "notASniffer" }]);
    state.value = LOST;
    await pass(600_000);
    expect(tries).toHaveLength(1);
    expect(control.state.value).toEqual({ kind: "gaveUp", why: "willNotMend" });
  });

  it("is tried again after a try that never answers", async () => {
    const { state, tries } = bench(["never", "back"]);
    state.value = LOST;
    await pass(500 + TRY_LIMIT_MS + 1000);
    expect(tries.map(({ aborted }) => aborted)).toEqual([true, false]);
    expect(state.value.kind).toBe("ready");
  });

  it("is left alone while the page is out of sight or the radio is off, and tried when that is over", async () => {
    const { state, inSight, availability, tries } = bench([]);
    inSight.value = false;
    state.value = LOST;
    await pass(600_000);
    expect(tries).toHaveLength(0);
    availability.value = "unavailable";
    inSight.value = true;
    await pass(600_000);
    expect(tries).toHaveLength(0);
    availability.value = "available";
    await pass(0);
    expect(tries).toHaveLength(1);
  });

  it("is tried without a radio where it is the virtual one, which needs none", async () => {
    const { state, availability, tries } = bench([]);
    availability.value = "unavailable";
    state.value = { kind: "lost", sniffer: { ...SNIFFER, virtual: true }, failure: null };
    await pass(600);
    expect(tries).toHaveLength(1);
  });

  it("is left alone once the person disconnects or gives up, and a try under way is broken off", async () => {
    for (const end of ["disconnect", "giveUp"] as const) {
      const { state, tries, control } = bench(["never"]);
      state.value = LOST;
      await pass(500);
      if (end === "giveUp") control.giveUp();
      else state.value = { kind: "none" };
      await pass(600_000);
      expect(tries.map(({ aborted }) => aborted)).toEqual([true]);
    }
  });
});
