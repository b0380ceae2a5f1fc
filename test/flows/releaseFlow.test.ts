/** A sniffer on its way back to clean air; decays made from ln R(t) - ln R0 = -a exp(-t / tau). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { releaseFlow, type ReleaseEvent } from "../../src/flows/releaseFlow.js";
import {
  isClearing,
  isStuck,
  NOT_FOLLOWING,
  RELEASE_LIMIT_MS,
  STUCK_MS,
  type ReleaseState,
} from "../../src/flows/releaseState.js";
import { BACK_WITHIN } from "../../src/sniff/recovery.js";

const BASE = [20_000, 90_000];
const CLEAN = { atMs: [0, 2000, 4000], ohm: [BASE, BASE, BASE] };
const SWEEP_MS = 2000;
/** The sniffer's clock stands anywhere when the release begins. */
const BEGAN_MS = 900_000;

const purge: ReleaseEvent = { kind: "purge", cleanAir: CLEAN };
const told = (state: "purging" | "ready" | "measuring"): ReleaseEvent => ({ kind: "status", state });
const sweepAt = (i: number, away: number): ReleaseEvent => ({
  kind: "sweep",
  sweep: { atMs: BEGAN_MS + i * SWEEP_MS, ohm: BASE.map((ohm) => ohm * Math.exp(-away)) },
});
const decay = (sweeps: number, away: number, tauMs: number) =>
  Array.from({ length: sweeps }, (_, i) => sweepAt(i, away * Math.exp((-i * SWEEP_MS) / tauMs)));
const away = (sweeps: number) => Array.from({ length: sweeps }, (_, i) => sweepAt(i, 0.4));

function run(events: readonly ReleaseEvent[], from: ReleaseState = NOT_FOLLOWING) {
  const effects: string[] = [];
  let state = from;
  for (const event of events) {
    const next = releaseFlow(state, event);
    state = next.state;
    if (next.effect !== null) effects.push(next.effect);
  }
  return { state, effects };
}

const FOLLOWED = [purge, told("purging"), told("ready")];

describe("after the plate", () => {
  it("waits for the purge to end by itself, then asks for sweeps", () => {
    // PROFILE.md 5: while purging it sends nothing, then it is ready by itself. The stop before is told as well.
    expect(run([purge, told("ready"), told("purging")]).effects).toEqual([]);
    expect(run(FOLLOWED)).toMatchObject({ state: { kind: "following" }, effects: ["startSweeps"] });
  });

  it("follows a sniffer that refuses to purge as it is", () => {
    expect(run([purge, { kind: "noPurge" }]).effects).toEqual(["startSweeps"]);
  });

  it("follows nothing where no clean air was measured: there is nothing to come back to", () => {
    const none: ReleaseEvent = { kind: "purge", cleanAir: undefined };
    expect(run([none, told("purging"), told("ready"), ...away(9)])).toEqual({
      state: NOT_FOLLOWING,
      effects: [],
    });
    expect(run([{ kind: "purge", cleanAir: { atMs: [], ohm: [] } }]).state).toEqual(NOT_FOLLOWING);
  });

  it("names the analytic time left, held against the clean air of the same check", () => {
    const { state } = run([...FOLLOWED, ...decay(11, 0.5, 20_000)]);
    const wanted = 20_000 * Math.log(0.5 / BACK_WITHIN) - 10 * SWEEP_MS;
    if (state.kind !== "following" || state.now.kind !== "releasing") throw new Error("not releasing");
    expect(state.now.leftMs).toBeCloseTo(wanted, 3);
    expect(isClearing(state)).toBe(true);
  });

  it("is back at the limit and not before, and lets the sniffer rest", () => {
    const at = (distance: number) => run([...FOLLOWED, ...[0, 1, 2].map((i) => sweepAt(i, distance))]);
    expect(at(BACK_WITHIN * 0.999)).toEqual({
      state: { kind: "back" },
      effects: ["startSweeps", "stopSweeps"],
    });
    expect(at(BACK_WITHIN * 1.001)).toMatchObject({ state: { kind: "following" }, effects: ["startSweeps"] });
    expect(isClearing(at(BACK_WITHIN * 0.999).state)).toBe(false);
  });
});

describe("where it does not come back", () => {
  const toldFrom = 5; // the sixth sweep is the first that a decay could be fitted to
  const stuckAt = toldFrom + Math.ceil(STUCK_MS / SWEEP_MS);

  it("says so once no end was in sight for long enough, and not a sweep before", () => {
    expect(isStuck(run([...FOLLOWED, ...away(stuckAt)]).state)).toBe(false);
    expect(isStuck(run([...FOLLOWED, ...away(stuckAt + 1)]).state)).toBe(true);
  });

  it("takes it back when the sniffer is carried into fresh air", () => {
    const stuck = run([...FOLLOWED, ...away(stuckAt + 1)]).state;
    const carried = [1, 2, 3].map((i) => sweepAt(stuckAt + i, 0.01));
    expect(run(carried, stuck)).toEqual({ state: { kind: "back" }, effects: ["stopSweeps"] });
  });

  it("gives up at the limit, and not a sweep before, so that nobody's charge is spent on it", () => {
    const limit = RELEASE_LIMIT_MS / SWEEP_MS;
    expect(run([...FOLLOWED, ...away(limit)]).state.kind).toBe("following");
    const over = run([...FOLLOWED, ...away(limit + 1)]);
    expect(over).toEqual({ state: { kind: "gaveUp" }, effects: ["startSweeps", "stopSweeps"] });
    expect([isStuck(over.state), isClearing(over.state)]).toEqual([true, true]);
  });
});

describe("ends quietly", () => {
  const everywhere: [string, readonly ReleaseEvent[]][] = [
    ["purging", FOLLOWED.slice(0, 2)],
    ["listening", FOLLOWED],
    ["releasing", [...FOLLOWED, ...decay(9, 0.5, 20_000)]],
    ["back", [...FOLLOWED, ...decay(3, 0.01, 20_000)]],
  ];
  it.each(everywhere)("while %s: a lost link or a next check leaves nothing behind", (_name, events) => {
    const before = run(events).state;
    expect(run([{ kind: "end" }, ...away(9), told("ready")], before)).toEqual({
      state: NOT_FOLLOWING,
      effects: [],
    });
  });

  it("where somebody else stops its run, but not before its first sweep came", () => {
    expect(run([...FOLLOWED, told("ready")]).state.kind).toBe("following");
    expect(run([...FOLLOWED, sweepAt(0, 0.4), told("measuring")]).state.kind).toBe("following");
    expect(run([...FOLLOWED, sweepAt(0, 0.4), told("ready")]).state).toEqual(NOT_FOLLOWING);
  });

  it("keeps no more sweeps than the fit needs, and never writes to what it was given", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), (sweeps) => {
        const from = run(FOLLOWED).state;
        const before = JSON.stringify(from);
        const { state } = run(away(sweeps), from);
        if (state.kind !== "following") throw new Error("not following");
        expect(state.sweeps.length).toBe(Math.min(sweeps, 31));
        expect(JSON.stringify(from)).toBe(before);
      }),
      { numRuns: 30 },
    );
  });
});
