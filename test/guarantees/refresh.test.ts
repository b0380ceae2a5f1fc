/** A few fresh samples bring a drifted nose up to date: simulated drift with known truth. */
import { expect, it } from "vitest";
import { answerSniff } from "../../src/nose/answer.js";
import type { Nose } from "../../src/nose/nose.js";
import { refreshAdvice } from "../../src/nose/refreshAdvice.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { refreshNose } from "../../src/teaching/refreshNose.js";
import { teachNose } from "../../src/teaching/teachNose.js";
import { syntheticSniffs } from "../teaching/syntheticSniffs.js";
import { useWasm } from "../teaching/useBackend.js";

const OPTIONS = { seed: 1, id: "n", name: "n", taughtAt: "2026-11-25T18:30:00Z", withoutNets: true };
const DRIFT = 0.9;
const STRENGTH = 6;

/** Share of group answers on the right side of one half. */
function accuracy(nose: Nose, sniffs: readonly Sniff[]): number {
  let right = 0;
  let all = 0;
  for (const sniff of sniffs) {
    const answer = answerSniff(nose, sniff);
    if (answer.kind !== "answered") continue;
    nose.groups.forEach(({ name }, i) => {
      const probability = answer.horizons.at(-1)!.probabilities[i] ?? 0.5;
      all += 1;
      if (probability >= 0.5 === (sniff.groups[name] === "present")) right += 1;
    });
  }
  return right / all;
}

it("five fresh samples a group win back at least nine tenths of what full re-teaching would", async () => {
  await useWasm();
  let [lost, wonBack] = [0, 0];
  for (const seed of [1, 2, 3]) {
    const old = syntheticSniffs({ plates: 80, seed, strength: STRENGTH });
    const drifted = (plates: number, more: number, prefix: string) =>
      syntheticSniffs({ plates, seed: seed + more, strength: STRENGTH, drift: DRIFT, prefix });
    // Five with and five without each of the two groups, more or less: ten plates.
    const fresh = drifted(10, 100, "fresh");
    const judged = drifted(150, 200, "judged");
    const before = await teachNose(old, OPTIONS);
    const full = await teachNose(drifted(80, 300, "full"), OPTIONS);
    if (!before.ok || !full.ok) throw new Error("not taught");
    const refreshed = await refreshNose(before.value.nose, old, fresh, OPTIONS);
    if (!refreshed.ok) throw new Error("not refreshed");
    const atFirst = accuracy(before.value.nose, judged);
    lost += accuracy(full.value.nose, judged) - atFirst;
    wonBack += accuracy(refreshed.value.nose, judged) - atFirst;
  }
  // The drift must have cost something, or winning it back shows nothing.
  expect(lost / 3).toBeGreaterThan(0.1);
  expect(wonBack / lost).toBeGreaterThanOrEqual(0.9);
});

it("advises fresh samples after drift or 40 days, and says how many", () => {
  const taught = "2026-01-01T00:00:00Z";
  expect(refreshAdvice(taught, "2026-02-10T00:00:00Z", true)).toEqual({ kind: "fresh" });
  expect(refreshAdvice(taught, "2026-02-10T00:00:01Z", undefined)).toEqual({
    kind: "worthwhile",
    why: "age",
    platesPerGroup: 5,
  });
  expect(refreshAdvice(taught, "2026-01-02T00:00:00Z", false)).toMatchObject({ why: "drift" });
});
