import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { restForTouches } from "../../src/app/restForTouches.js";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const touch = (glass: EventTarget) => glass.dispatchEvent(new Event("pointerdown"));

describe("work that nobody waits for", () => {
  it("goes on at once where no finger came down", async () => {
    const onTurn = vi.fn();
    void restForTouches(new EventTarget())(300).then(onTurn);
    await vi.advanceTimersByTimeAsync(1);
    expect(onTurn).toHaveBeenCalledOnce();
  });

  it("rests from a touch on, anew from each that comes meanwhile, and then goes on at once again", async () => {
    const glass = new EventTarget();
    const [turn, onTurn] = [restForTouches(glass), vi.fn()];
    touch(glass);
    void turn(300).then(onTurn);
    await vi.advanceTimersByTimeAsync(200);
    touch(glass);
    await vi.advanceTimersByTimeAsync(290);
    expect(onTurn).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(20);
    expect(onTurn).toHaveBeenCalledOnce();
    void turn(300).then(onTurn);
    await vi.advanceTimersByTimeAsync(1);
    expect(onTurn).toHaveBeenCalledTimes(2);
  });
});
