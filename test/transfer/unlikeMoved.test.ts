/** A moved nose and what is unlike anything taught: its limit stands on plates that the second sniffer sniffed. */
import { expect, it } from "vitest";
import { UNLIKE_RATE } from "../../src/finding/bands.js";
import { answerSniff } from "../../src/nose/answer.js";
import type { Nose } from "../../src/nose/nose.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { transferNose } from "../../src/transfer/transferNose.js";
import { mostWidened, movedHorizons } from "../../src/transfer/unlikeLimit.js";
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

/** What no map makes good: half of the channels at a share of their resistance over the plate. */
const bent = ({ headspace, ...sniff }: Sniff, by: number): Sniff => ({
  ...sniff,
  headspace: {
    ...headspace,
    ohm: headspace.ohm.map((sweep) => sweep.map((ohm, channel) => (channel < 4 ? by * ohm : ohm))),
  },
});

it("what no plate ever was is unlike still: half of the channels at a third of their resistance over the plate", () => {
  for (const { seed, nose } of MOVED) {
    const strange = later(seed, 16).map((sniff) => bent(sniff, 0.3));
    expect(share(strange.map((sniff) => isUnlike(nose, sniff)))).toBe(1);
  }
});

it("is widened by no more than brings the typical plate of the first sniffer to the line", () => {
  // Counted by hand: of 1, 2, ... 21 the middle is 11, and 20 stands at 95 % of the way.
  expect(mostWidened(Float32Array.from({ length: 21 }, (_, i) => i + 1))).toBeCloseTo(20 / 11, 6);
  const { seed, nose } = MOVED[0]!;
  const { transfer } = nose;
  if (transfer === undefined) throw new Error("the nose was not moved");
  const served = servedToTwo({ onFirst: 24, onSecond: 60, seed });
  const [first, second] = [DEMO_NOSE.sniffer.id, SECOND_ID].map((id) =>
    served.filter(({ sniffer }) => sniffer.id === id),
  );
  if (first === undefined || second === undefined) throw new Error("two sniffers sniffed");
  const maps = new Map(first.map(({ plate }) => [plate, transfer.map]));
  const widenedBy = (by: number) => {
    const horizons = movedHorizons(
      DEMO_NOSE,
      { ...nose, transfer, horizons: DEMO_NOSE.horizons },
      first,
      second.map((sniff) => bent(sniff, by)),
      maps,
    );
    const factors = horizons.map(
      ({ heldOutDistances }, at) => heldOutDistances[0]! / DEMO_NOSE.horizons[at]!.heldOutDistances[0]!,
    );
    return { horizons, factors };
  };
  const most = DEMO_NOSE.horizons.map(({ heldOutDistances }) => mostWidened(heldOutDistances));
  for (const [at, factor] of widenedBy(1).factors.entries()) expect(factor).toBeLessThan(most[at]!);
  const { horizons, factors } = widenedBy(0.3);
  for (const [at, factor] of factors.entries()) {
    expect(factor).toBeCloseTo(most[at]!, 5);
    // What is usual moves with the line: else the map alone would draw every answer in.
    const [usual, before] = [horizons, DEMO_NOSE.horizons].map((all) => all[at]!.usualDistance ?? Number.NaN);
    expect(usual! / before!).toBeCloseTo(factor, 5);
  }
  // Pairs that were all bent do not teach the nose that bent is usual.
  const more = later(seed, 16).map((sniff) => bent(sniff, 0.3));
  expect(share(more.map((sniff) => isUnlike({ ...nose, horizons }, sniff)))).toBe(1);
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
