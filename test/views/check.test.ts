import { expect, it } from "vitest";
import type { CheckState } from "../../src/flows/checkState.js";
import { STEADY_MAX_DRIFT } from "../../src/sniff/steadiness.js";
import { checkView, type CheckContext } from "../../src/views/checkView.js";
import { durationText } from "../../src/views/durationText.js";
import { snifferView } from "../../src/views/snifferView.js";
import { TRACE_HEIGHT, traceView } from "../../src/views/traceView.js";
import * as checks from "../browser/gallery/fixtures/checks.js";
import { NOT_RECONNECTING } from "../../src/views/reconnectView.js";
import { FILLED, SNIFFER_CONTEXT } from "../browser/gallery/fixtures/plates.js";
import { plateHomeView } from "../../src/views/plateHomeView.js";
import { FAILED, FAULTY, LOST, READY, VIRTUAL } from "../browser/gallery/fixtures/sniffers.js";
import { ENGLISH } from "../browser/gallery/fixtures/words.js";

const CONTEXT: CheckContext = {
  practice: false,
  isJar: false,
  practiceSpeed: 8,
  hasAllergy: false,
  acceptedMissRate: 0.05,
  likelyMs: null,
  snifferLost: false,
  reconnecting: NOT_RECONNECTING,
  countdown: null,
};
const bodyOf = (state: CheckState, context: Partial<CheckContext> = {}) =>
  checkView(state, { ...CONTEXT, ...context }, ENGLISH)!.body;

it("shows nothing of a check that does not run", () => {
  expect(checkView({ phase: "idle" }, CONTEXT, ENGLISH)).toBeNull();
});

it("tells the time left of the warm-up and how much of it is over", () => {
  // 71 s of 120 s are left: 49 / 120 is over. Counted by hand.
  const body = bodyOf(checks.WARMING);
  expect(body).toMatchObject({ phase: "warming", left: "1\u00a0min 11\u00a0s left" });
  expect(body.phase === "warming" && body.progress).toBeCloseTo(49 / 120, 12);
});

it("speaks of the jar, not of a plate, while the check jar is sniffed, and of no group in it", () => {
  const shown = [checks.OVER_PLATE, checks.HEADSPACE].map((state) =>
    checkView(state, { ...CONTEXT, isJar: true, practice: true }, ENGLISH),
  );
  for (const view of shown) {
    expect(view?.dish).toBe("Check jar");
    expect(`${view?.body.title} ${view?.body.phase === "overPlate" ? view.body.text : ""}`).not.toMatch(
      /plate/i,
    );
  }
  expect(shown[0]?.body).toMatchObject({ note: "The practice kitchen has opened the jar." });
  expect(shown[1]?.body).toMatchObject({ title: "Sniffing the jar", evidence: [] });
});

it("tells the time that the answer will likely take, until it is there or overdue", () => {
  const likely = (elapsedMs: number, likelyMs: number | null, settled = false) => {
    const body = bodyOf({ ...checks.HEADSPACE, elapsedMs, settled } as CheckState, { likelyMs });
    return body.phase === "headspace" ? body.likely : undefined;
  };
  // 42.68 s less 2.68 s are 40 s; rounded up, as all time that is left.
  expect(likely(2_680, 42_680)).toBe("likely about 40\u00a0s more");
  expect(likely(42_680, 42_680)).toBe("longer than most plates take");
  expect(likely(10_000, 42_680, true)).toBeNull();
  expect(likely(10_000, null)).toBeNull();
});

it("tells the likely time before the start, and a belief with its number", () => {
  const filled = plateHomeView({ ...FILLED, noseName: "Market", likelyMs: 42_680 }, ENGLISH);
  expect(filled.check.note).toMatch(/Market”\. Likely about 43\u00a0s over the plate\./);
  expect(filled.belief?.groups[0]?.options.map(({ label }) => label)).toEqual([
    "no idea",
    "rather not (20%)",
    "even (50%)",
    "rather yes (80%)",
  ]);
});

it("rounds time up, so that nothing reads 0 s while time is left", () => {
  expect(durationText(1, ENGLISH)).toBe("1\u00a0s");
  expect(durationText(0, ENGLISH)).toBe("0\u00a0s");
  expect(durationText(60_000, ENGLISH)).toBe("1\u00a0min");
});

it.each([
  [STEADY_MAX_DRIFT, "within"],
  [STEADY_MAX_DRIFT * 1.001, "beyond"],
  [Number.NaN, "unknown"],
] as const)("calls a drift of %s %s its limit", (drift, state) => {
  const steadiness = { steady: false, why: "drifting" as const, drift, scatter: 0.01 };
  const body = bodyOf({ ...checks.CLEAN_AIR_DRIFT, steadiness } as CheckState);
  expect(body.phase === "cleanAir" && body.gauges[0]?.state).toBe(state);
});

it("tells the least time until the air can be called steady, and the time gone by once the window is full", () => {
  // Two sweeps 2 s apart of a window of 20 s: 18 s are left. Counted by hand.
  const start = bodyOf(checks.CLEAN_AIR_START);
  expect(start.phase === "cleanAir" && start.time).toBe("At least 18\u00a0s more");
  const full = bodyOf(checks.CLEAN_AIR_DRIFT);
  expect(full.phase === "cleanAir" && full.time).toMatch(/^Waiting for \d+\s(s|min)/);
});

it("shows how to hold the sniffer, then the seconds, and lets nobody wait who is there already", () => {
  const before = bodyOf(checks.OVER_PLATE);
  expect(before).toMatchObject({
    countdown: null,
    button: "Start the countdown",
    guide: { pose: "overPlate" },
  });
  const counting = bodyOf(checks.OVER_PLATE, { countdown: 2 });
  expect(counting).toMatchObject({ countdown: "2", button: "I am there: start now" });
});

it("words the evidence of a running sniff as a lean, never as a finding", () => {
  const body = bodyOf(checks.HEADSPACE);
  if (body.phase !== "headspace") throw new Error("not over the plate");
  expect(body.evidence.map(({ lean }) => lean)).toEqual(["leaning yes", "no lean yet", "leaning no"]);
  for (const { band } of body.evidence) expect(band.tone).toBe("uncertain");
});

it.each(checks.INTERRUPT_CAUSES)("says what happened, what helps and what was kept after %s", (cause) => {
  const usable = bodyOf(checks.interruptedBy(cause, true));
  if (usable.phase !== "interrupted") throw new Error("not interrupted");
  expect(usable.kept).toContain("9 sweeps");
  expect(usable.actions.map(({ id }) => id)).toContain("useGathered");
  const useless = bodyOf(checks.interruptedBy(cause, false));
  if (useless.phase !== "interrupted") throw new Error("not interrupted");
  expect(useless.actions.map(({ id }) => id)).not.toContain("useGathered");
  expect(useless.actions.filter(({ main }) => main)).toHaveLength(1);
});

it("counts down to the next try and offers to try now or to stop", () => {
  const reconnecting = { state: { kind: "waiting", tries: 2, dueAtMs: 0 }, secondsLeft: 4 } as const;
  const body = bodyOf(checks.interruptedBy("linkLost", false), { snifferLost: true, reconnecting });
  if (body.phase !== "interrupted") throw new Error("not interrupted");
  expect(body.countdown).toBe("Next try in 4\u00a0s");
  expect(body.actions.map(({ id, label }) => [id, label])).toEqual([
    ["reconnect", "Try now"],
    ["giveUp", "Stop trying"],
  ]);
  expect(snifferView(LOST, { ...SNIFFER_CONTEXT, reconnecting }, ENGLISH)).toMatchObject({
    countdown: "Next try in 4\u00a0s",
    actions: [{ id: "reconnect" }, { id: "giveUp" }],
  });
});

it("says why a sniff cannot go on once the sniffer is back, and offers what was gathered", () => {
  const body = bodyOf(checks.interruptedBy("linkLost", true, "restarted"));
  if (body.phase !== "interrupted") throw new Error("not interrupted");
  expect(body.what).toContain("lost power");
  expect(body.actions.map(({ id }) => id)).toEqual(["restart", "useGathered"]);
});

it("offers the two sniffers used last without the chooser, and warns where the radio is off", () => {
  const known = ["one", "two", "three"].map((name) => ({ deviceId: name, name }));
  const view = snifferView({ kind: "none" }, { ...SNIFFER_CONTEXT, known, radioOff: true }, ENGLISH);
  expect(view.actions.map(({ id, value }) => [id, value])).toEqual([
    ["known", "one"],
    ["known", "two"],
    ["pair", undefined],
    ["useVirtual", undefined],
  ]);
  expect([view.text, view.urgent]).toEqual([expect.stringContaining("Bluetooth is off"), true]);
});

it("names the sniffer that the browser has forgotten, and offers first of all to choose it again", () => {
  const context = { ...SNIFFER_CONTEXT, forgotten: "Sniffer A1" };
  const view = snifferView({ kind: "none" }, context, ENGLISH);
  expect(view.text).toBe("This browser does not remember Sniffer A1. Choose it again in the browser’s list.");
  expect(view.actions.map(({ id, label, main }) => [id, label, main])).toEqual([
    ["pair", "Choose it again", true],
    ["useVirtual", "Use the virtual sniffer", false],
  ]);
  const failure = { kind: "forgotten", name: "Sniffer A1" } as const;
  const known = [{ deviceId: "one", name: "one" }];
  const failed = snifferView({ kind: "failed", failure }, { ...SNIFFER_CONTEXT, known }, ENGLISH);
  expect(failed.text).toBe(view.text);
  expect(failed.actions.map(({ id, main }) => [id, main])).toEqual([
    ["pair", true],
    ["known", false],
    ["useVirtual", false],
  ]);
  // Where there is no Web Bluetooth there is no list to choose from.
  const without = snifferView({ kind: "none" }, { ...context, bluetooth: false }, ENGLISH);
  expect(without.actions.map(({ id }) => id)).toEqual(["useVirtual"]);
});

it("says nothing of the radio or the browser while a sniffer is being connected, so that nothing moves after", () => {
  const connecting = { kind: "connecting", name: "", virtual: true } as const;
  const view = snifferView(connecting, { ...SNIFFER_CONTEXT, bluetooth: false, radioOff: true }, ENGLISH);
  expect([view.warning, view.unsupported, view.busy]).toEqual([null, null, true]);
  expect(view.title).toContain("Virtual sniffer");
});

it("offers to connect again before anything can start anew, and going on only in unsteady air", () => {
  const lost = bodyOf(checks.interruptedBy("linkLost", true), { snifferLost: true });
  expect(lost.phase === "interrupted" && lost.actions.map(({ id }) => id)).toEqual([
    "reconnect",
    "useGathered",
  ]);
  const unsteady = bodyOf(checks.interruptedBy("neverSteady", false));
  expect(unsteady.phase === "interrupted" && unsteady.actions.map(({ id }) => id)).toEqual([
    "restart",
    "goOn",
  ]);
});

it("warns somebody allergic of the steam before and during the sniff", () => {
  for (const state of [checks.OVER_PLATE, checks.HEADSPACE]) {
    const body = bodyOf(state, { hasAllergy: true });
    expect("steam" in body && body.steam).toContain("steam can carry protein");
  }
});

it("draws no change on the middle line, and a halved resistance as far down as a doubled one up", () => {
  const gathered = {
    ...(checks.OVER_PLATE.phase === "overPlate" ? checks.OVER_PLATE.gathered : never()),
    cleanAir: [{ atMs: 0, ohm: [100, 100, 100] }],
    headspace: [
      { atMs: 0, ohm: [100, 100, 100] },
      { atMs: 2000, ohm: [100, 50, 200] },
    ],
  };
  const ends = traceView(gathered, ENGLISH)!.lines.map((line) =>
    Number(line.split(" ").at(-1)!.split(",")[1]),
  );
  expect(ends).toEqual([TRACE_HEIGHT / 2, TRACE_HEIGHT, 0]);
});

function never(): never {
  throw new Error("the fixture is in another phase");
}

it("draws nothing without clean air to compare with", () => {
  if (checks.HEADSPACE.phase !== "headspace") throw new Error("the fixture is in another phase");
  expect(traceView({ ...checks.HEADSPACE.gathered, cleanAir: [] }, ENGLISH)).toBeNull();
});

const context = SNIFFER_CONTEXT;
it("tells plainly what works without Web Bluetooth, and offers no pairing there", () => {
  const view = snifferView({ kind: "none" }, { ...context, bluetooth: false }, ENGLISH);
  expect(view.actions.map(({ id }) => id)).toEqual(["useVirtual"]);
  expect(view.unsupported?.works).toContain("Everything else works here");
  expect(view.text).toBeNull(); // and none is advised
});

it("marks practice, a low battery, and a sniffer that this app is too old for", () => {
  expect(snifferView(VIRTUAL, context, ENGLISH).practice).toContain("8 times faster");
  expect(snifferView(READY, context, ENGLISH).practice).toBeNull();
  expect(snifferView(READY, context, ENGLISH).warning).toBeNull();
  expect(snifferView(FAULTY, context, ENGLISH).warning).toContain("Low battery");
  expect(snifferView(FAILED, context, ENGLISH).text).toContain("Update the app");
  expect(snifferView(LOST, context, ENGLISH).actions[0]?.id).toBe("reconnect");
});
