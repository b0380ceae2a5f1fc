// A piece of the app that the network does not give: it is waited for, the person is told, and no other fault is hidden.
// That an import without an answer rejects with a TypeError is HTML's own rule (WHATWG, HTML, 8.1.6.7.3).
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { ASKED_AGAIN_MS, isPieceMissing, untilHere } from "../../src/app/pieces.js";

const unanswered = () => new TypeError("Failed to fetch dynamically imported module");

let network: EventTarget;

beforeEach(() => {
  vi.useFakeTimers();
  network = new EventTarget();
  vi.stubGlobal("addEventListener", network.addEventListener.bind(network));
  vi.stubGlobal("removeEventListener", network.removeEventListener.bind(network));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A piece that comes at the given try, and how often it was asked for. */
function pieceAt(lastTry: number) {
  const load = vi.fn(() =>
    load.mock.calls.length < lastTry ? Promise.reject(unanswered()) : Promise.resolve("piece"),
  );
  return load;
}

const turn = () => vi.advanceTimersByTimeAsync(0);

describe("a piece that comes late", () => {
  it("is told of by nothing where it comes at once", async () => {
    const piece = untilHere(pieceAt(1));
    expect(isPieceMissing.value).toBe(false);
    expect(await piece).toBe("piece");
    expect(vi.getTimerCount()).toBe(0);
  });

  it("is asked for again as soon as the network is back", async () => {
    const load = pieceAt(3);
    const piece = untilHere(load);
    await turn();
    expect([load.mock.calls.length, isPieceMissing.value]).toEqual([1, true]);
    network.dispatchEvent(new Event("online"));
    await turn();
    expect([load.mock.calls.length, isPieceMissing.value]).toEqual([2, true]);
    network.dispatchEvent(new Event("online"));
    expect(await piece).toBe("piece");
    expect([isPieceMissing.value, vi.getTimerCount()]).toEqual([false, 0]);
  });

  it("is asked for again after a while where no event tells of the network", async () => {
    const load = pieceAt(2);
    const piece = untilHere(load);
    await vi.advanceTimersByTimeAsync(ASKED_AGAIN_MS - 1);
    expect(load).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(await piece).toBe("piece");
    network.dispatchEvent(new Event("online"));
    expect(load).toHaveBeenCalledTimes(2);
  });

  it("is missing until the last of several is here", async () => {
    const [soon, late] = [untilHere(pieceAt(2)), untilHere(pieceAt(3))];
    await vi.advanceTimersByTimeAsync(ASKED_AGAIN_MS);
    await soon;
    expect(isPieceMissing.value).toBe(true);
    await vi.advanceTimersByTimeAsync(ASKED_AGAIN_MS);
    await late;
    expect(isPieceMissing.value).toBe(false);
  });

  it("throws its own fault at once, also after it was missing", async () => {
    const fault = new RangeError("a table names no group");
    await expect(untilHere(() => Promise.reject(fault))).rejects.toBe(fault);
    const load = vi.fn<() => Promise<string>>().mockRejectedValueOnce(unanswered()).mockRejectedValue(fault);
    const later = untilHere(load);
    const thrown = expect(later).rejects.toBe(fault);
    await vi.advanceTimersByTimeAsync(ASKED_AGAIN_MS);
    await thrown;
    expect([isPieceMissing.value, load.mock.calls.length]).toEqual([false, 2]);
  });
});
