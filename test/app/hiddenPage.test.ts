/** What the live traces and the screen lock do while the page is hidden: nothing, and they come back with it. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createWakeKeeper } from "../../src/app/attention.js";
import { startTraceLoop } from "../../src/app/nose/traceLoop.js";
import { createTraceRing, TRACE_WINDOWS_MS } from "../../src/sniff/traceRing.js";

class Page extends EventTarget {
  visibilityState: "visible" | "hidden" = "visible";
  show(state: Page["visibilityState"]): void {
    this.visibilityState = state;
    this.dispatchEvent(new Event("visibilitychange"));
  }
}

let page: Page;
beforeEach(() => {
  page = new Page();
  vi.stubGlobal("document", page);
});
afterEach(() => vi.unstubAllGlobals());

describe("the screen lock", () => {
  /** Locks as the browser gives them: it takes them back when the page is hidden (Screen Wake Lock, section 6). */
  function lockable(refuses = false) {
    const held = new Set<object>();
    const request = vi.fn(() => {
      if (refuses) return Promise.reject(new Error("NotAllowedError"));
      const lock = { release: () => Promise.resolve(void held.delete(lock)) };
      held.add(lock);
      return Promise.resolve(lock);
    });
    page.addEventListener("visibilitychange", () => page.visibilityState === "hidden" && held.clear());
    vi.stubGlobal("navigator", { wakeLock: { request } });
    return { held, request, keeper: createWakeKeeper() };
  }
  const settle = () => new Promise((resolve) => setTimeout(resolve));

  it("is held while wanted, is not asked for by a hidden page, and is taken again when it comes back", async () => {
    const { held, request, keeper } = lockable();
    await keeper.keep(true);
    expect(held.size).toBe(1);
    page.show("hidden");
    await settle();
    expect([held.size, request.mock.calls.length]).toEqual([0, 1]);
    page.show("visible");
    await settle();
    expect(held.size).toBe(1);
    await keeper.keep(false);
    expect(held.size).toBe(0);
  });

  it("is not taken when the page comes back and nobody wants it any more", async () => {
    const { held, request, keeper } = lockable();
    await keeper.keep(true);
    page.show("hidden");
    await keeper.keep(false);
    page.show("visible");
    await settle();
    expect([held.size, request.mock.calls.length]).toEqual([0, 1]);
  });

  it("is let go where it was given after nobody wanted it any more", async () => {
    const { held, keeper } = lockable();
    const asked = keeper.keep(true);
    await keeper.keep(false);
    await asked;
    await settle();
    expect(held.size).toBe(0);
  });

  it("may be refused, as with a low battery, and the sniff goes on", async () => {
    await expect(lockable(true).keeper.keep(true)).resolves.toBeUndefined();
  });
});

describe("the live traces", () => {
  class Watch {
    observe(): void {}
    disconnect(): void {}
  }

  /** A canvas whose pen counts the pictures, and frames that are drawn when the test says. */
  function traces(lengthMs: (typeof TRACE_WINDOWS_MS)[number] = TRACE_WINDOWS_MS[0]) {
    const frames: FrameRequestCallback[] = [];
    let pictures = 0;
    const pen = new Proxy(
      { setTransform: () => (pictures += 1), measureText: () => ({ width: 10 }) } as Record<string, unknown>,
      { get: (known, name) => known[String(name)] ?? (() => undefined), set: () => true },
    );
    vi.stubGlobal("matchMedia", () => ({ matches: false, addEventListener() {}, removeEventListener() {} }));
    vi.stubGlobal("ResizeObserver", Watch);
    vi.stubGlobal("IntersectionObserver", Watch);
    vi.stubGlobal("devicePixelRatio", 1);
    vi.stubGlobal("getComputedStyle", () => ({ getPropertyValue: () => "#000", fontFamily: "serif" }));
    vi.stubGlobal("requestAnimationFrame", (draw: FrameRequestCallback) => frames.push(draw));
    vi.stubGlobal("cancelAnimationFrame", () => frames.splice(0));
    const ring = createTraceRing(2);
    const canvas = { getContext: () => pen, clientWidth: 320, clientHeight: 200, width: 0, height: 0 };
    let tell = () => {};
    let sweeps = 0;
    const end = startTraceLoop(canvas as unknown as HTMLCanvasElement, {
      window: () => ring.windows.get(lengthMs) ?? null,
      onSweep: (listener) => {
        tell = listener;
        return () => (tell = () => {});
      },
    });
    return {
      sweep: () => {
        ring.push((sweeps += 1) * 100, [50_000 + sweeps, 60_000]);
        tell();
      },
      runFrames: () => frames.splice(0).forEach((draw) => draw(sweeps * 100)),
      waiting: () => frames.length,
      pictures: () => pictures,
      end,
    };
  }

  it("draw once a frame however many sweeps came", () => {
    const { sweep, runFrames, waiting, pictures } = traces();
    for (let i = 0; i < 10; i += 1) sweep();
    expect(waiting()).toBe(1);
    runFrames();
    expect(pictures()).toBe(1);
  });

  it("stand still while the page is hidden, miss no sweep, and are drawn once when it comes back", () => {
    const { sweep, runFrames, waiting, pictures } = traces();
    page.show("hidden");
    for (let i = 0; i < 600; i += 1) sweep();
    expect([waiting(), pictures()]).toEqual([0, 0]);
    page.show("visible");
    expect(waiting()).toBe(1);
    runFrames();
    expect(pictures()).toBe(1);
  });

  it("of an hour are drawn four times while a bucket of twelve seconds fills, and once more when the sweeps end", () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const { sweep, runFrames, waiting, pictures, end } = traces(3_600_000);
    for (let i = 0; i < 95; i += 1) {
      sweep();
      runFrames();
    }
    expect(pictures()).toBe(4); // at 0.1, 3.1, 6.1 and 9.1 s; counted by hand
    vi.advanceTimersByTime(3000);
    expect(waiting()).toBe(1);
    end();
    vi.useRealTimers();
  });

  it("end with their page: nothing is asked for afterwards", () => {
    const { sweep, waiting, end } = traces();
    sweep();
    end();
    sweep();
    page.show("hidden");
    page.show("visible");
    expect(waiting()).toBe(0);
  });
});
