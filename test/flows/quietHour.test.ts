// An hour of a virtual sniffer's own bytes: when is its air sensor called stuck?
import { expect, it } from "vitest";
import { fitness } from "../../src/flows/fitness.js";
import { takeBytes } from "../../src/flows/snifferBytes.js";
import type { ConnectedSniffer } from "../../src/flows/snifferState.js";
import { seededRandom } from "../../src/kernel/random.js";
import { encodeHumidity } from "../../src/profile/environment.js";
import { HUMIDITY } from "../../src/profile/uuids.js";
import { NIGHT_MARKET, plateOf } from "../../src/virtual/dishes.js";
import { eveningAir } from "../../src/virtual/roomAir.js";
import { advance, createVirtualSniffer, serve } from "../../src/virtual/virtualSniffer.js";
import { SNIFFER } from "../browser/gallery/fixtures/sniffers.js";

const STEP_MS = 1000;
const HOUR_STEPS = 3600;

/** Seconds after which the air sensor is first called stuck; null if never. */
function stuckAfterS(seed: number, options: { plates?: boolean; frozenPct?: number } = {}): number | null {
  const random = seededRandom(seed);
  let unit = createVirtualSniffer({ seed, room: eveningAir(random), uptimeMs: 600_000 });
  let known: ConnectedSniffer = { ...SNIFFER, recentAir: [], air: {} };
  for (let step = 0; step < HOUR_STEPS; step += 1) {
    if (options.plates === true && step % 300 === 0)
      unit = serve(
        unit,
        step % 600 === 0 ? null : plateOf(NIGHT_MARKET[(step / 300) % NIGHT_MARKET.length]!, random),
      );
    const { sniffer, notifications } = advance(unit, STEP_MS);
    unit = sniffer;
    for (const { address, bytes } of notifications) {
      const isFrozen = options.frozenPct !== undefined && address.characteristic === HUMIDITY.characteristic;
      known = takeBytes(known, address, isFrozen ? encodeHumidity(options.frozenPct!) : bytes).sniffer;
    }
    if (fitness(known, 0).airSensor.fit === "attention") return (step * STEP_MS) / 1000;
  }
  expect(known.recentAir.length).toBeGreaterThan(20);
  return null;
}

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

it("never in a quiet hour, nor in one over plates", () => {
  expect(SEEDS.map((seed) => stuckAfterS(seed))).toEqual(SEEDS.map(() => null));
  expect(SEEDS.map((seed) => stuckAfterS(seed, { plates: true }))).toEqual(SEEDS.map(() => null));
});

it("frozen in mid-scale, within half a minute over the first warm plate; mango with rice is too cool to show it", () => {
  for (const seed of SEEDS) {
    const overWarmPlateS = stuckAfterS(seed, { plates: true, frozenPct: 45.23 })! - 900;
    expect(overWarmPlateS).toBeGreaterThan(0);
    expect(overWarmPlateS).toBeLessThanOrEqual(30);
  }
});
