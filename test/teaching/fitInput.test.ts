import { describe, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { standardised } from "../../src/nose/standardised.js";
import { fitInput } from "../../src/teaching/fitInput.js";

const ROWS = 60;
const FOODS = 6;
const food = Int32Array.from({ length: ROWS }, (_, row) => row % FOODS);
const plate = Int32Array.from({ length: ROWS }, (_, row) => row);
const weight = new Float64Array(ROWS).fill(1);

/** One feature: three for each unit of humidity, and a smell of its own for each food; steaming foods smell more. */
function steamed(slope = 3, noise = 0.01) {
  const random = seededRandom(2);
  const rise = Float64Array.from(
    { length: ROWS },
    (_, row) => 0.3 * food[row]! + 0.2 * standardNormal(random),
  );
  const values = rise.map((one, row) => slope * one + 2 * food[row]! + noise * standardNormal(random));
  return { rows: ROWS, features: 1, values, rise };
}

describe("humidity correction", () => {
  it("is fitted within a food: a steaming food that smells more does not pass for humidity", () => {
    const { humiditySlope } = fitInput(steamed(), [plate, food], weight, 1);
    expect(humiditySlope[0]).toBeCloseTo(3, 1);
  });

  it("takes out the share that is asked for, and nothing at 0", () => {
    const [whole, half, none] = [1, 0.5, 0].map((share) => fitInput(steamed(), [plate, food], weight, share));
    expect(half!.humiditySlope[0]! / whole!.humiditySlope[0]!).toBeCloseTo(0.5, 6);
    expect(none!.humiditySlope[0]).toBe(0);
  });

  it("leaves what differs between two damp and two dry sniffs of one food as small as its noise", () => {
    const raw = steamed();
    const map = fitInput(raw, [plate, food], weight, 1);
    const seen = (row: number) => standardised(map, raw.values.subarray(row, row + 1), raw.rise[row]!)[0]!;
    const spread = (one: (row: number) => number) => {
      const own = [...plate].filter((row) => food[row] === 0).map(one);
      return Math.max(...own) - Math.min(...own);
    };
    const plain = spread((row) => (raw.values[row]! - map.centre[0]!) / map.scale[0]!);
    expect(spread(seen)).toBeLessThan(plain / 5);
  });

  it("corrects nothing where the humidity explains no more than chance", () => {
    // Positive-part shrinkage, 1 - 1/F: at F below 1 the slope is 0 (James and Stein, 1961).
    const slopes = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => {
      const random = seededRandom(seed);
      const raw = steamed(0, 0);
      const values = raw.values.map(() => standardNormal(random));
      return fitInput({ ...raw, values }, [plate, food], weight, 1).humiditySlope[0]!;
    });
    expect(slopes.filter((slope) => slope === 0).length).toBeGreaterThanOrEqual(4);
  });

  it("corrects nothing where one sniff in four has no humidity, or too few are of one food", () => {
    const raw = steamed();
    const gaps = raw.rise.map((one, row) => (row % 4 === 0 ? NaN : one));
    expect(fitInput({ ...raw, rise: gaps }, [plate, food], weight, 1).humiditySlope[0]).toBe(0);
    expect(fitInput(raw, [plate], weight, 1).humiditySlope[0]).toBe(0);
  });

  it("rows that are held out have no part in it", () => {
    const raw = steamed();
    const held = weight.map((_, row) => (row < 12 ? 0 : 1));
    const spoilt = raw.values.map((one, row) => (row < 12 ? 1000 : one));
    expect(fitInput({ ...raw, values: spoilt }, [plate, food], held, 1)).toEqual(
      fitInput(raw, [plate, food], held, 1),
    );
  });
});
