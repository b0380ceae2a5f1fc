import { beforeAll, describe, expect, it } from "vitest";
import { refreshText } from "../../src/cli/refreshText.js";
import { answerSniff } from "../../src/nose/answer.js";
import { compareNoses } from "../../src/nose/compareNoses.js";
import type { Nose } from "../../src/nose/nose.js";
import { parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import { refreshWithGain } from "../../src/teaching/refreshWithGain.js";
import { teachNose, type TeachOptions } from "../../src/teaching/teachNose.js";
import { syntheticSniffs } from "./syntheticSniffs.js";
import { useWasm } from "./useBackend.js";

const OPTIONS: TeachOptions = {
  seed: 1,
  id: "n",
  name: "n",
  taughtAt: "2026-11-25T18:30:00Z",
  withoutNets: true,
};
const OLD = syntheticSniffs({ plates: 80, seed: 1, strength: 6 });
// Drift as in test/guarantees/refresh.test.ts: it costs an old nose dearly.
const FRESH = syntheticSniffs({ plates: 14, seed: 101, strength: 6, drift: 0.9, prefix: "fresh" });
let old: Nose;

beforeAll(async () => {
  await useWasm();
  const taught = await teachNose(OLD, OPTIONS);
  if (!taught.ok) throw new Error(taught.error.kind);
  old = taught.value.nose;
});

describe("a refresh over drift", () => {
  it("shows its gain on fresh plates, every one held out once", async () => {
    const refreshed = await refreshWithGain(old, OLD, FRESH, OPTIONS);
    if (!refreshed.ok) throw new Error(refreshed.error.kind);
    const { refresh } = refreshed.value.report;
    expect(refresh).toMatchObject({ of: { id: "n" }, freshPlates: 14, folds: 5 });
    for (const { plates, found, quiet, olderLogLoss, newerLogLoss } of refresh!.gain) {
      expect([plates, found.older.trials + quiet.older.trials]).toEqual([14, 14]);
      expect(newerLogLoss).toBeLessThan(olderLogLoss);
    }
    // What the old nose says of the fresh plates, counted here once more without the code under test.
    const right = FRESH.filter((sniff) => {
      const answer = answerSniff(old, sniff);
      const p = answer.kind === "answered" ? (answer.horizons.at(-1)?.probabilities[0] ?? 0.5) : 0.5;
      return p >= 0.5 === (sniff.groups[old.groups[0]!.name] === "present");
    }).length;
    const [first] = refresh!.gain;
    expect(first!.found.older.events + first!.quiet.older.events).toBe(right);
    expect(refreshText(refreshed.value)).toContain("14 fresh plates");
    expect(parseNose(serialiseNose(refreshed.value))).toEqual({ ok: true, value: refreshed.value });
  });

  it("leaves out plates that the nose was taught, and refuses where hardly one is fresh", async () => {
    const some = await refreshWithGain(old, OLD, [...OLD.slice(0, 20), ...FRESH.slice(0, 1)], OPTIONS);
    expect(some).toEqual({ ok: false, error: { kind: "tooFewFresh", plates: 1 } });
    const other = FRESH.map((sniff) => ({ ...sniff, sniffer: { ...sniff.sniffer, id: "another" } }));
    expect(await refreshWithGain(old, OLD, other, OPTIONS)).toEqual({
      ok: false,
      error: { kind: "tooFewFresh", plates: 0 },
    });
  });

  it("stops when asked to", async () => {
    const stopped = await refreshWithGain(old, OLD, FRESH, { ...OPTIONS, isCancelled: () => true });
    expect(stopped).toEqual({ ok: false, error: { kind: "cancelled" } });
  });
});

describe("two noses side by side", () => {
  it("are tried on the plates of the newer one that the older one never met, by its plain answers", async () => {
    const taught = await teachNose(FRESH, { ...OPTIONS, id: "newer" });
    if (!taught.ok) throw new Error(taught.error.kind);
    expect(compareNoses(old, taught.value.nose)).toEqual([]);
    const compared = compareNoses(old, taught.value.nose, FRESH);
    expect(compared.map(({ plates }) => plates)).toEqual([14, 14]);
    // Turned round, the same plates and the sides exchanged.
    const turned = compareNoses(taught.value.nose, old, FRESH);
    compared.forEach(({ group, found, quiet }) => {
      const other = turned.find((one) => one.group === group)!;
      expect([other.found.newer, other.found.onlyOlder]).toEqual([found.older, found.onlyNewer]);
      expect([other.quiet.newer, other.quiet.p]).toEqual([quiet.older, quiet.p]);
    });
  });

  it("never lets a nose judge a plate that it was taught, whatever the samples", () => {
    const [meat] = compareNoses(old, old, OLD);
    expect(meat).toEqual(compareNoses(old, old)[0]);
    const { plateNames: _unnamed, ...nameless } = old;
    expect(compareNoses(nameless, nameless, OLD)).toEqual([]);
  });
});
