import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkFlow, IDLE, STEADY_KEPT_MS, STEADY_LIMIT_MS } from "../../src/flows/checkFlow.js";
import type { CheckEffect, CheckEvent, CheckState } from "../../src/flows/checkState.js";
import type { PlateFinding } from "../../src/finding/finding.js";
import { SUBJECT } from "./subject.js";

const finding: PlateFinding = {
  format: "nidor-finding/1",
  sniffId: "s1",
  headspaceMs: 0,
  acceptedMissRate: 0.1,
  groups: [],
};

function run(events: readonly CheckEvent[], from: CheckState = IDLE) {
  const effects: CheckEffect[] = [];
  let state = from;
  for (const event of events) {
    const next = checkFlow(state, event);
    state = next.state;
    effects.push(...next.effects);
  }
  return { state, effects, kinds: effects.map((effect) => effect.kind) };
}

const sweep = (atMs: number, ohm: number): CheckEvent => ({ kind: "sweep", sweep: { atMs, ohm: [ohm] } });
const sweeps = (fromMs: number, count: number, ohmAt: (i: number) => number): CheckEvent[] =>
  Array.from({ length: count }, (_, i) => sweep(fromMs + i * 2000, ohmAt(i)));
/** The tap over the plate, and the sweep that was under way at that moment. */
const overPlate: CheckEvent[] = [{ kind: "overPlateNow" }, sweep(24_000, 35_000)];
const begin: CheckEvent = { kind: "begin", subject: SUBJECT };
const steadyAir = sweeps(0, 12, (i) => 50_000 + (i % 2) * 50);

describe("a check at the table", () => {
  it("waits for the heater and takes no sweep of a cold one", () => {
    const { state } = run([begin, { kind: "warmUp", leftMs: 40_000 }, sweep(0, 90_000), sweep(2000, 80_000)]);
    expect(state).toMatchObject({ phase: "warming", warmUpLeftMs: 40_000, gathered: { cleanAir: [] } });
  });

  it("measures the warm-up against the longest time left", () => {
    const { state } = run([begin, { kind: "warmUp", leftMs: 60_000 }, { kind: "warmUp", leftMs: 15_000 }]);
    expect(state).toMatchObject({ phase: "warming", warmUpLeftMs: 15_000, warmUpMs: 60_000 });
  });

  it("asks for the plate once clean air is steady, and not before", () => {
    expect(run([begin, ...steadyAir.slice(0, 5)]).state.phase).toBe("cleanAir");
    expect(run([begin, ...steadyAir]).state.phase).toBe("overPlate");
  });

  it("keeps waiting while the baseline drifts by 1 % a sweep", () => {
    const { state } = run([begin, ...sweeps(0, 20, (i) => 50_000 * 0.99 ** i)]);
    expect(state).toMatchObject({ phase: "cleanAir", steadiness: { steady: false, why: "drifting" } });
  });

  it("says so when clean air never settles, and lets the user go on with that flag", () => {
    const scattered = sweeps(0, STEADY_LIMIT_MS / 2000 + 3, (i) => 50_000 * (i % 2 === 0 ? 1 : 1.2));
    const { state } = run([begin, ...scattered]);
    expect(state).toMatchObject({ phase: "interrupted", cause: "neverSteady", usable: false });
    const goneOn = run([{ kind: "goOnUnsteady" }], state).state;
    expect(goneOn).toMatchObject({ phase: "overPlate", gathered: { flags: ["cleanAirUnsteady"] } });
  });

  it("takes clean air anew where it grew old before the hand moved, and asks for the plate once that is steady", () => {
    // Unsteady from the last sweep of `steadyAir` at 22 s on, as with a door that opens and shuts.
    const gusts = sweeps(24_000, STEADY_KEPT_MS / 2000, (i) => (i % 2 === 0 ? 60_000 : 72_000));
    const before = run([begin, ...steadyAir, ...gusts.slice(0, -1)]);
    expect(before.state).toMatchObject({ phase: "overPlate", steadyAtMs: 22_000 });
    const old = run([...gusts.slice(-1), sweep(24_000 + STEADY_KEPT_MS, 60_000)], before.state);
    expect(old.state).toMatchObject({ phase: "cleanAir", steadiness: { steady: false } });
    expect(old.effects).toEqual([{ kind: "announce", phase: "cleanAir" }]);
    const again = run(
      sweeps(86_000, 12, (i) => 60_000 + (i % 2) * 50),
      old.state,
    );
    expect(again.state).toMatchObject({ phase: "overPlate", countingDown: false });
    const { effects } = run(
      [{ kind: "overPlateNow" }, sweep(110_000, 35_000), sweep(112_000, 20_000)],
      again.state,
    );
    const asked = effects.find((effect) => effect.kind === "assess");
    expect(asked?.sniff.cleanAirAgeMs).toBe(4000); // counted by hand: steady up to 108 s
    expect(asked?.sniff.cleanAir?.ohm.every(([ohm]) => ohm === 60_000 || ohm === 60_050)).toBe(true);
  });

  it("keeps the old baseline while the hand is on its way, and for whoever went on in unsteady air", () => {
    const later = sweeps(24_000, 60, () => 20_000);
    const onItsWay = run([begin, ...steadyAir, { kind: "getReady" }, ...later]);
    expect(onItsWay.state).toMatchObject({ phase: "overPlate", steadyAtMs: 22_000, countingDown: true });
    const scattered = sweeps(0, 2 * (STEADY_LIMIT_MS / 2000), (i) => 50_000 * (i % 2 === 0 ? 1 : 1.2));
    const half = STEADY_LIMIT_MS / 2000 + 3;
    const goneOn = [begin, ...scattered.slice(0, half), { kind: "goOnUnsteady" } as const];
    expect(run([...goneOn, ...scattered.slice(half)]).state.phase).toBe("overPlate");
  });

  it.each(["linkLost", "noSweeps", "neverSteady"] as const)(
    "is stopped by a heater fault though it stood still already (%s), and its sniff says so",
    (cause) => {
      const over = [begin, ...steadyAir, ...overPlate, sweep(26_000, 20_000)];
      const { state, effects } = run([
        ...over,
        { kind: "interrupted", cause },
        { kind: "interrupted", cause: "snifferFault" },
      ]);
      expect(state).toMatchObject({ phase: "interrupted", cause: "snifferFault", during: "headspace" });
      const drafts = effects.filter((effect) => effect.kind === "saveDraft");
      expect(drafts.at(-1)?.sniff.flags).toContain("heaterFault");
      // The other way round the fault stays what is told.
      const stays = run([{ kind: "interrupted", cause }], state);
      expect(stays.state).toBe(state);
      const used = run([{ kind: "finishNow" }], state).effects.find(({ kind }) => kind === "assess");
      expect(used).toMatchObject({ sniff: { flags: expect.arrayContaining(["heaterFault"]) as string[] } });
    },
  );

  it("asks for a judgement of every headspace sweep, and for the last one at the time limit", () => {
    const over = sweeps(30_000, 31, () => 20_000);
    const { effects } = run([begin, ...steadyAir, ...overPlate, ...over]);
    const asked = effects.filter((effect) => effect.kind === "assess");
    expect(asked).toHaveLength(31);
    expect(asked.map((effect) => effect.last)).toEqual([...Array<boolean>(30).fill(false), true]);
  });

  it("lets the sweep go that was under way when the hand moved: half of it is clean air", () => {
    const { effects } = run([begin, ...steadyAir, ...overPlate, sweep(26_000, 20_000)]);
    const asked = effects.filter((effect) => effect.kind === "assess");
    expect(asked.map((effect) => effect.sniff.headspace.ohm)).toEqual([[[20_000]]]);
  });

  it("counts down once while the hand is on its way, and takes none of that air as clean", () => {
    const ready = run([begin, ...steadyAir, { kind: "getReady" }]);
    expect(ready.state).toMatchObject({ phase: "overPlate", countingDown: true });
    expect(ready.kinds.filter((kind) => kind === "countDown")).toHaveLength(1);
    expect(run([{ kind: "getReady" }], ready.state).effects).toEqual([]);
    // As steady as clean air, but it may be the plate's: it must not count.
    const moved = run([sweep(24_000, 50_000), ...overPlate, sweep(30_000, 20_000)], ready.state);
    const asked = moved.effects.find((effect) => effect.kind === "assess");
    expect(asked?.sniff.cleanAirAgeMs).toBe(8000); // from 22 s, the last sweep before the tap, to 30 s
  });

  it("has no count-down before the air is steady, and asks for it again after a break", () => {
    expect(run([begin, { kind: "getReady" }]).kinds).not.toContain("countDown");
    const cut = [{ kind: "getReady" }, { kind: "interrupted", cause: "linkLost" }] as const;
    const back = run(
      [...cut, { kind: "linkBack", run: { kind: "sameRun", gapMs: 3000 } }],
      run([begin, ...steadyAir]).state,
    );
    expect(back.state).toMatchObject({ phase: "overPlate", countingDown: false });
  });

  it("records how old the clean air was when the plate came", () => {
    const { effects } = run([begin, ...steadyAir, ...overPlate, sweep(100_000, 20_000)]);
    const asked = effects.find((effect) => effect.kind === "assess");
    // The last clean-air sweep was at 22 s (counted by hand), the first over the plate at 100 s.
    expect(asked?.sniff.cleanAirAgeMs).toBe(78_000);
  });

  it("does not let the plate's own steam become the baseline", () => {
    const steam = sweeps(24_000, 10, (i) => 50_000 * 0.8 ** (i + 1));
    const { effects } = run([begin, ...steadyAir, ...steam, ...overPlate, sweep(44_000, 5_000)]);
    const asked = effects.find((effect) => effect.kind === "assess");
    expect(Math.min(...(asked?.sniff.cleanAir?.ohm.flat() ?? []))).toBeGreaterThan(49_000);
  });

  it("keeps the sniff so far when the radio is lost over the plate", () => {
    const over = sweeps(30_000, 5, () => 20_000);
    const { state, effects } = run([
      begin,
      ...steadyAir,
      ...overPlate,
      ...over,
      { kind: "interrupted", cause: "linkLost" },
    ]);
    expect(state).toMatchObject({
      phase: "interrupted",
      cause: "linkLost",
      during: "headspace",
      usable: true,
    });
    const draft = effects.find((effect) => effect.kind === "saveDraft");
    expect(draft?.sniff.headspace.atMs).toHaveLength(5);
    expect(draft?.sniff.flags).toEqual(["linkLost"]);
    const used = run([{ kind: "finishNow" }], state);
    expect(used.effects).toMatchObject([{ kind: "assess", last: true, sniff: { flags: ["linkLost"] } }]);
  });

  it.each([
    [3, undefined],
    [5, ["sweepsLost"]],
  ])("with %i sweeps lost of 13 that came carries the flag %s", (count, flags) => {
    const lost: CheckEvent = { kind: "sweepsLost", count };
    const { effects } = run([begin, ...steadyAir, lost, ...overPlate, sweep(30_000, 20_000)]);
    expect(effects.find((effect) => effect.kind === "assess")?.sniff.flags).toEqual(flags);
  });

  it("has nothing to use when the radio is lost before the plate", () => {
    const { state } = run([begin, ...steadyAir, { kind: "interrupted", cause: "linkLost" }]);
    expect(state).toMatchObject({ phase: "interrupted", usable: false });
    expect(run([{ kind: "finishNow" }], state).effects).toEqual([]);
  });

  it("goes on over the plate when the same run is heard again soon, and asks nothing of the sniffer", () => {
    const over = sweeps(30_000, 5, () => 20_000);
    const lost = run([
      begin,
      ...steadyAir,
      ...overPlate,
      ...over,
      { kind: "interrupted", cause: "linkLost" },
    ]);
    const back = run([{ kind: "linkBack", run: { kind: "sameRun", gapMs: 9000 } }], lost.state);
    expect(back.effects).toEqual([{ kind: "announce", phase: "headspace" }]);
    const later = run([{ kind: "sweepsLost", count: 2 }, sweep(46_000, 20_000)], back.state);
    const asked = later.effects.find((effect) => effect.kind === "assess");
    // Five sweeps before the hole and one after it; the hole is a count of lost sweeps, not a broken link.
    expect(asked?.sniff.headspace.atMs).toEqual([0, 2000, 4000, 6000, 8000, 16_000]);
    expect(asked?.sniff.flags).toBeUndefined();
  });

  it("does not go on over a hole too large: what was recorded stays as it was, with the reason", () => {
    const over = sweeps(30_000, 5, () => 20_000);
    const lost = run([
      begin,
      ...steadyAir,
      ...overPlate,
      ...over,
      { kind: "interrupted", cause: "linkLost" },
    ]);
    const back = run([{ kind: "linkBack", run: { kind: "sameRun", gapMs: 60_000 } }], lost.state);
    expect(back.state).toEqual({ ...lost.state, refused: "gapTooLong" });
    expect(back.effects).toEqual([{ kind: "stopSweeps" }]);
    const late = run([sweep(95_000, 20_000), { kind: "finishNow" }], back.state);
    expect(late.effects).toMatchObject([{ kind: "assess", sniff: { flags: ["linkLost"] } }]);
  });

  it("begins clean air again after a restart, for nothing of a plate was recorded", () => {
    const lost = run([begin, ...steadyAir.slice(0, 4), { kind: "interrupted", cause: "linkLost" }]);
    const back = run([{ kind: "linkBack", run: { kind: "broken", why: "restarted" } }], lost.state);
    expect(back.state).toMatchObject({ phase: "cleanAir", gathered: { cleanAir: [], flags: [] } });
    expect(back.kinds).toContain("startSweeps");
  });

  it("that stands still for another cause is not moved by a link that is back", () => {
    const fault = run([begin, { kind: "interrupted", cause: "snifferFault" }]).state;
    const back = run([{ kind: "linkBack", run: { kind: "sameRun", gapMs: 0 } }], fault);
    expect(back).toMatchObject({ state: fault, effects: [] });
  });

  it("ends when the evidence has settled, then purges the sensor and lets the screen sleep", () => {
    const over = run([begin, ...steadyAir, ...overPlate, sweep(30_000, 20_000)]);
    const asked = over.effects.find((effect) => effect.kind === "assess");
    if (asked === undefined) throw new Error("a headspace sweep must be judged");
    const moving = run(
      [{ kind: "assessed", sniff: asked.sniff, finding, settled: false, last: false }],
      over.state,
    );
    expect(moving.state).toMatchObject({ phase: "headspace", live: finding });
    const ended = run(
      [{ kind: "assessed", sniff: asked.sniff, finding, settled: true, last: false }],
      over.state,
    );
    expect(ended.state).toEqual({ phase: "done", sniff: asked.sniff, finding });
    expect(ended.kinds).toEqual(["purge", "keepAwake", "announce"]);
    // Leaving the finding lets the purge run on.
    expect(run([{ kind: "cancel" }], ended.state)).toMatchObject({ state: IDLE, kinds: [] });
  });

  it.each([
    ["warming", [begin, { kind: "warmUp", leftMs: 10_000 }]],
    ["cleanAir", [begin]],
    ["overPlate", [begin, ...steadyAir]],
    ["headspace", [begin, ...steadyAir, { kind: "overPlateNow" }]],
    ["interrupted", [begin, { kind: "interrupted", cause: "linkLost" }]],
  ] as [string, CheckEvent[]][])("can be cancelled while %s, and started again", (phase, events) => {
    const { state } = run(events);
    expect(state.phase).toBe(phase);
    const cancelled = run([{ kind: "cancel" }], state);
    expect(cancelled.state).toEqual(IDLE);
    expect(cancelled.kinds).toEqual(["stopSweeps", "keepAwake"]);
    expect(run([begin], cancelled.state).kinds).toContain("startSweeps");
  });

  it("shows a kept sniff again, but never over a running one", () => {
    const over = run([begin, ...steadyAir, ...overPlate, sweep(26_000, 20_000)]);
    const asked = over.effects.find((effect) => effect.kind === "assess");
    if (asked === undefined) throw new Error("a headspace sweep must be judged");
    const reopen: CheckEvent = { kind: "reopen", sniff: asked.sniff, finding };
    expect(run([reopen]).state).toEqual({ phase: "done", sniff: asked.sniff, finding });
    expect(run([reopen], over.state).state).toBe(over.state);
  });

  it("never loses or doubles a headspace sweep, whatever else happens", () => {
    const other = fc.constantFrom<CheckEvent>(
      { kind: "sweepsLost", count: 1 },
      { kind: "air", reading: { humidityPct: 50 } },
      { kind: "overPlateNow" },
      { kind: "warmUp", leftMs: 0 },
    );
    fc.assert(
      fc.property(fc.array(fc.option(other, { nil: null }), { maxLength: 25 }), (mixed) => {
        let atMs = 30_000;
        const events = mixed.map((event) => event ?? sweep((atMs += 500), 20_000));
        const { state } = run([begin, ...steadyAir, ...overPlate, ...events]);
        if (state.phase !== "headspace") throw new Error(`left the plate: ${state.phase}`);
        expect(state.gathered.headspace).toHaveLength(mixed.filter((event) => event === null).length);
      }),
    );
  });
});
