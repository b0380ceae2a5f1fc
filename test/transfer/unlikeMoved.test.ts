/** A moved nose and what is unlike anything taught: its limit stands on plates that the second sniffer sniffed. */
import { expect, it } from "vitest";
import { UNLIKE_RATE } from "../../src/finding/bands.js";
import { answerSniff } from "../../src/nose/answer.js";
import type { Nose } from "../../src/nose/nose.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { transferNose } from "../../src/transfer/transferNose.js";
import { DEMO_NOSE, SECOND_ID, secondUnit, servedToTwo } from "./twoSniffers.js";

const OPTIONS = {
  id: "moved",
  name: "Moved nose",
  transferredAt: "2026-12-01T20:00:00Z",
  sniffer: { id: SECOND_ID, channels: DEMO_NOSE.sniffer.channels },
};

const SEEDS = [1, 2, 3, 4, 5, 6];
const MOVED = SEEDS.flatMap((seed) => {
  const moved = transferNose(DEMO_NOSE, servedToTwo({ onFirst: 24, onSecond: 60, seed }), OPTIONS);
  return moved.ok ? [{ seed, nose: moved.value.nose }] : [];
});
const isUnlike = (nose: Nose, sniff: Sniff) => {
  const answer = answerSniff(nose, sniff);
  if (answer.kind !== "answered") throw new Error(answer.kind);
  return answer.horizons.at(-1)!.familiarity <= UNLIKE_RATE;
};
const share = (flags: readonly boolean[]) => flags.filter(Boolean).length / flags.length;

/** Plates of another evening under the second sniffer. */
const later = (seed: number, plates: number) =>
  servedToTwo({
    onFirst: 0,
    onSecond: plates,
    seed: seed + 500,
    second: { unit: secondUnit(seed), ageDays: 0, unitSeed: 2 },
  });
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

it("plates of the market are called unlike about as often as the limit says; by the first sniffer's limit twice as often", () => {
  expect(MOVED.length).toBeGreaterThan(3);
  const shares = MOVED.map(({ seed, nose }) => {
    const plates = later(seed, 64);
    const unmoved = { ...nose, horizons: DEMO_NOSE.horizons };
    return {
      moved: share(plates.map((sniff) => isUnlike(nose, sniff))),
      unmoved: share(plates.map((sniff) => isUnlike(unmoved, sniff))),
    };
  });
  expect(mean(shares.map(({ moved }) => moved))).toBeLessThan(1.6 * UNLIKE_RATE);
  expect(mean(shares.map(({ unmoved }) => unmoved))).toBeGreaterThan(2 * UNLIKE_RATE);
  for (const { moved } of shares) expect(moved).toBeLessThan(2 * UNLIKE_RATE);
});

it("what no plate ever was is unlike still: half of the channels at a third of their resistance over the plate", () => {
  for (const { seed, nose } of MOVED) {
    const strange = later(seed, 16).map(({ headspace, ...sniff }) => ({
      ...sniff,
      headspace: {
        ...headspace,
        ohm: headspace.ohm.map((sweep) => sweep.map((ohm, channel) => (channel < 4 ? 0.3 * ohm : ohm))),
      },
    }));
    expect(share(strange.map((sniff) => isUnlike(nose, sniff)))).toBe(1);
  }
});

it("a plate that the nose was taught tells nothing: it is near itself on the first sniffer", () => {
  const { nose } = MOVED[0]!;
  const served = servedToTwo({ onFirst: 24, onSecond: 60, seed: MOVED[0]!.seed });
  const taught = { ...DEMO_NOSE, plateNames: [...new Set(served.map(({ plate }) => plate))] };
  const moved = transferNose(taught, served, OPTIONS);
  if (!moved.ok) throw new Error(moved.error.kind);
  const limits = ({ horizons }: Nose) => horizons.map(({ heldOutDistances }) => heldOutDistances);
  expect(limits(moved.value.nose)).toEqual(limits(DEMO_NOSE));
  expect(limits(nose)).not.toEqual(limits(DEMO_NOSE));
});
