import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  FIRST_WAIT_MS,
  LONGEST_WAIT_MS,
  reconnectFlow,
  waitBeforeTry,
  type ReconnectEvent,
} from "../../src/flows/reconnectFlow.js";
import { MOST_TRIES, type ReconnectState } from "../../src/flows/reconnectState.js";

const OFF: ReconnectState = { kind: "off" };
const halfway = () => 0.5;
interface Ran {
  readonly state: ReconnectState;
  readonly effects: readonly (string | null)[];
}
const run = (events: readonly ReconnectEvent[], from: ReconnectState = OFF): Ran =>
  events.reduce<Ran>(
    (step, event) => {
      const next = reconnectFlow(step.state, event, 1000, halfway);
      return { state: next.state, effects: [...step.effects, next.effect] };
    },
    { state: from, effects: [] },
  );
const tries = (count: number): ReconnectEvent[] =>
  Array.from({ length: count }, () => [
    { kind: "due" } as const,
    { kind: "failed", mendable: true } as const,
  ]).flat();

describe("the wait before a try", () => {
  it("doubles from half a second to sixteen, at most", () => {
    // Counted by hand: 500, 1000, 2000, ... ms; a random source that always gives 0 leaves half of it.
    const halves = Array.from({ length: 8 }, (_, failed) => waitBeforeTry(failed, () => 0));
    expect(halves).toEqual([250, 500, 1000, 2000, 4000, 8000, 8000, 8000]);
  });

  it("leaves the upper half to chance, and never goes beyond its bounds", () => {
    fc.assert(
      fc.property(fc.nat(40), fc.double({ min: 0, max: 0.999, noNaN: true }), (failed, chance) => {
        const wait = waitBeforeTry(failed, () => chance);
        const whole = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** failed);
        expect(wait).toBeGreaterThanOrEqual(whole / 2);
        expect(wait).toBeLessThanOrEqual(whole);
      }),
    );
  });

  it.each([-1, 0.5, Number.NaN])("refuses %s failed tries", (failed) => {
    expect(() => waitBeforeTry(failed, halfway)).toThrow(RangeError);
  });

  it("comes to about the minute for which a sniffer keeps its run", () => {
    const sumFor = (chance: number) =>
      Array.from({ length: MOST_TRIES }, (_, failed) => waitBeforeTry(failed, () => chance)).reduce(
        (a, b) => a + b,
      );
    // 0.5 + 1 + 2 + 4 + 8 + 3 x 16 = 63.5 s, and half of that at the least. Counted by hand.
    expect([sumFor(1), sumFor(0)]).toEqual([63_500, 31_750]);
  });
});

describe("a lost sniffer", () => {
  it("is tried after a short wait, and again after each failure", () => {
    expect(run([{ kind: "lost" }]).state).toEqual({ kind: "waiting", tries: 0, dueAtMs: 1375 });
    const { state, effects } = run([{ kind: "lost" }, ...tries(1)]);
    expect(effects).toEqual([null, "connect", null]);
    expect(state).toEqual({ kind: "waiting", tries: 1, dueAtMs: 1750 });
  });

  it("is given up after the last try, and not before", () => {
    expect(run([{ kind: "lost" }, ...tries(MOST_TRIES - 1)]).state.kind).toBe("waiting");
    expect(run([{ kind: "lost" }, ...tries(MOST_TRIES)]).state).toEqual({ kind: "gaveUp", why: "bound" });
  });

  it("is given up at once where no second try changes the answer", () => {
    const { state } = run([{ kind: "lost" }, { kind: "due" }, { kind: "failed", mendable: false }]);
    expect(state).toEqual({ kind: "gaveUp", why: "willNotMend" });
  });

  it("is tried at once at a tap, and the count begins anew", () => {
    const { state, effects } = run([{ kind: "lost" }, ...tries(5), { kind: "tryNow" }]);
    expect([state, effects.at(-1)]).toEqual([{ kind: "trying", tries: 1 }, "connect"]);
    const after = run([{ kind: "giveUp" }, { kind: "tryNow" }], state);
    expect(after).toEqual({ state: { kind: "trying", tries: 1 }, effects: ["breakOff", "connect"] });
  });

  it("is left alone when the person gives up or disconnects, and a late answer changes nothing", () => {
    const lost = run([{ kind: "lost" }, { kind: "due" }]).state;
    expect(
      run([{ kind: "giveUp" }, { kind: "failed", mendable: true }, { kind: "due" }], lost).state,
    ).toEqual({
      kind: "gaveUp",
      why: "person",
    });
    expect(run([{ kind: "over" }, { kind: "failed", mendable: true }, { kind: "due" }], lost)).toEqual({
      state: OFF,
      effects: ["breakOff", null, null],
    });
  });

  it.each(["hidden", "radioOff"] as const)("is not tried while %s, and at once afterwards", (cause) => {
    const { state, effects } = run([{ kind: "lost" }, { kind: "hindered", cause }, { kind: "due" }]);
    expect([state, effects]).toEqual([{ kind: "paused", cause }, [null, null, null]]);
    expect(run([{ kind: "unhindered" }], state)).toEqual({
      state: { kind: "trying", tries: 1 },
      effects: ["connect"],
    });
  });

  it("never connects twice at once, never after it gave up or was hindered, whatever comes", () => {
    const event = fc.constantFrom<ReconnectEvent>(
      { kind: "lost" },
      { kind: "due" },
      { kind: "failed", mendable: true },
      { kind: "failed", mendable: false },
      { kind: "hindered", cause: "hidden" },
      { kind: "unhindered" },
      { kind: "tryNow" },
      { kind: "giveUp" },
      { kind: "over" },
      { kind: "back" },
    );
    fc.assert(
      fc.property(fc.array(event, { maxLength: 60 }), (events) => {
        let state: ReconnectState = OFF;
        let underWay = false;
        for (const next of events) {
          const step = reconnectFlow(state, next, 0, halfway);
          if (next.kind === "failed" || next.kind === "back") underWay = false;
          if (step.effect === "breakOff") underWay = false;
          if (step.effect === "connect") {
            expect(underWay).toBe(false);
            underWay = true;
          }
          expect(step.state.kind === "trying").toBe(underWay);
          state = step.state;
        }
      }),
    );
  });
});
