import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { RunAfterLoss } from "../../src/flows/checkState.js";
import { commandTook } from "../../src/flows/commandTook.js";
import {
  afterLoss,
  CLEAN_AIR_GAP_MS,
  HEADSPACE_GAP_MS,
  rejoined,
  runAfterLoss,
  STEADY_GAP_MS,
} from "../../src/flows/resumeSniff.js";
import type { ConnectedSniffer } from "../../src/flows/snifferState.js";
import { beginSweeps } from "../../src/profile/assembleSweeps.js";
import type { SnifferStatus } from "../../src/profile/status.js";
import { SNIFFER } from "../browser/gallery/fixtures/sniffers.js";

const STATUS: SnifferStatus = {
  state: "measuring",
  heaterFault: false,
  run: 7,
  warmUpLeftMs: 0,
  deviceTimeMs: 100_000,
  burnInHours: 200,
};
const snifferAt = (
  status: Partial<SnifferStatus>,
  rest: Partial<ConnectedSniffer> = {},
): ConnectedSniffer => ({
  ...SNIFFER,
  lastRun: 7,
  status: { ...STATUS, ...status },
  assembly: beginSweeps(7, SNIFFER.layout.channels.length),
  ...rest,
});
const before = snifferAt({});

describe("a sniffer that answers again", () => {
  it("is in the same run where its time went on and its run number stands", () => {
    expect(runAfterLoss(before, snifferAt({ deviceTimeMs: 108_000 }))).toEqual({
      kind: "sameRun",
      gapMs: 8000,
    });
  });

  it("counts the hole from the last sweep where that is newer than the last status", () => {
    const assembly = beginSweeps(7, 1);
    const clock = { sentMs: 103_000, atMs: 103_000 };
    const swept = { ...before, assembly: { ...assembly, gathering: { ...assembly.gathering, clock } } };
    expect(runAfterLoss(swept, snifferAt({ deviceTimeMs: 108_000 }))).toEqual({
      kind: "sameRun",
      gapMs: 5000,
    });
  });

  it("is in the same run across the wrap of its clock", () => {
    const late = snifferAt({ deviceTimeMs: 0xffffffff });
    expect(runAfterLoss(late, snifferAt({ deviceTimeMs: 1999 }))).toEqual({ kind: "sameRun", gapMs: 2000 });
  });

  it.each([
    ["its time went back", { deviceTimeMs: 99_999 }, "restarted"],
    ["it knows of no run", { run: 0, state: "ready" }, "restarted"],
    ["another run was started", { run: 8 }, "runEnded"],
    ["it stands still", { state: "ready" }, "runEnded"],
    ["it purges", { state: "purging" }, "runEnded"],
  ] as const)("is not in the same run where %s", (_what, status, why) => {
    const after = snifferAt({ deviceTimeMs: 101_000, ...status });
    expect(runAfterLoss(before, after)).toEqual({ kind: "broken", why });
  });

  it("takes no time at all as the same run still: the edge belongs to it", () => {
    expect(runAfterLoss(before, snifferAt({}))).toEqual({ kind: "sameRun", gapMs: 0 });
  });

  it("is another one with another id, or with other channels", () => {
    const { layout } = SNIFFER;
    const others = [
      { ...layout, snifferId: "00000000000000b2" },
      { ...layout, channels: [...layout.channels, ...layout.channels] },
    ];
    for (const other of others)
      expect(runAfterLoss(before, snifferAt({}, { layout: other }))).toEqual({
        kind: "broken",
        why: "otherSniffer",
      });
  });
});

describe("a check that stood still", () => {
  const gap = (gapMs: number): RunAfterLoss => ({ kind: "sameRun", gapMs });
  const broken = (why: "restarted" | "runEnded" | "otherSniffer"): RunAfterLoss => ({ kind: "broken", why });

  it.each([
    ["cleanAir", CLEAN_AIR_GAP_MS],
    ["overPlate", STEADY_GAP_MS],
  ] as const)("in %s goes on up to its longest hole, and begins again beyond it", (during, longest) => {
    expect(afterLoss(during, gap(longest - 1))).toEqual({ kind: "goOn" });
    expect(afterLoss(during, gap(longest))).toEqual({ kind: "goOn" });
    expect(afterLoss(during, gap(longest + 1))).toEqual({ kind: "beginAgain" });
    expect(afterLoss(during, broken("restarted"))).toEqual({ kind: "beginAgain" });
  });

  it("over the plate goes on up to its longest hole, and keeps its part beyond it, with the reason", () => {
    expect(afterLoss("headspace", gap(HEADSPACE_GAP_MS))).toEqual({ kind: "goOn" });
    expect(afterLoss("headspace", gap(HEADSPACE_GAP_MS + 1))).toEqual({
      kind: "keepPart",
      why: "gapTooLong",
    });
    expect(afterLoss("headspace", broken("restarted"))).toEqual({ kind: "keepPart", why: "restarted" });
    expect(afterLoss("headspace", broken("runEnded"))).toEqual({ kind: "keepPart", why: "runEnded" });
  });

  it("while warming goes on after any hole, for nothing was measured", () => {
    expect(afterLoss("warming", gap(3_600_000))).toEqual({ kind: "goOn" });
    expect(afterLoss("warming", broken("restarted"))).toEqual({ kind: "beginAgain" });
  });

  it("never begins again over a plate, and never goes on in a broken run or with another sniffer", () => {
    const phase = fc.constantFrom("warming", "cleanAir", "overPlate", "headspace");
    const why = fc.constantFrom("restarted", "runEnded", "otherSniffer");
    fc.assert(
      fc.property(phase, why, fc.nat(200_000), (during, cause, gapMs) => {
        const inBroken = afterLoss(during, broken(cause));
        expect(inBroken.kind).not.toBe("goOn");
        if (cause === "otherSniffer") expect(inBroken).toEqual({ kind: "keepPart", why: cause });
        expect(afterLoss("headspace", gap(gapMs)).kind).not.toBe("beginAgain");
      }),
    );
  });
});

describe("what is taken over into the new connection", () => {
  const fresh = snifferAt({}, { assembly: null, lastRun: 7, health: { ...SNIFFER.health, sweeps: 0 } });

  it("is the run under way and the counts in the same run, only the counts in a broken one", () => {
    const same = rejoined(before, fresh, { kind: "sameRun", gapMs: 0 });
    expect(same.assembly).toBe(before.assembly);
    expect(same.health).toBe(before.health);
    const other = rejoined(before, fresh, { kind: "broken", why: "runEnded" });
    expect([other.assembly, other.health]).toEqual([null, before.health]);
  });

  it("is nothing of another sniffer", () => {
    const stranger = { ...fresh, layout: { ...fresh.layout, snifferId: "00000000000000b2" } };
    expect(rejoined(before, stranger, { kind: "broken", why: "otherSniffer" })).toBe(stranger);
  });
});

describe("a command whose answer never came", () => {
  it.each([
    [{ kind: "start", run: 7 }, {}, true],
    [{ kind: "start", run: 8 }, {}, false],
    [{ kind: "start", run: 7 }, { state: "ready" }, false],
    [{ kind: "stop" }, { state: "ready" }, true],
    [{ kind: "stop" }, { state: "purging" }, false],
    [{ kind: "stop" }, {}, false],
    [{ kind: "purge" }, { state: "purging" }, true],
    [{ kind: "purge" }, { state: "ready" }, false],
  ] as const)("%o, then the status %o: taken is %s", (command, status, took) => {
    expect(commandTook({ ...STATUS, ...status }, command)).toBe(took);
  });
});
