import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { drawTraces } from "../../src/screens/parts/drawTraces.js";
import { createTraceRing } from "../../src/sniff/traceRing.js";
import { traceScale } from "../../src/views/traceScale.js";
import { countingPen, FIELD } from "./countingPen.js";

const MINUTE = 60_000;

/** The channels' lines; the first line drawn is the middle of the field. */
function drawn(channels: number, sweeps: readonly (readonly [number, readonly number[]])[]) {
  const ring = createTraceRing(channels);
  for (const [atMs, ohm] of sweeps) ring.push(atMs, ohm);
  const window = ring.windows.get(MINUTE)!;
  const { pen, lines, labels } = countingPen();
  drawTraces(pen, FIELD, window, traceScale(window));
  return { lines: lines.slice(1), labels };
}

describe("the drawn traces", () => {
  it("start on the middle line; a doubled resistance reaches the top, a halved one the bottom", () => {
    const { lines } = drawn(2, [
      [1000, [100, 300]],
      [2000, [200, 150]],
    ]);
    expect(lines.map((line) => line[0]?.y)).toEqual([100, 100]);
    expect(lines[0]!.at(-1)?.y).toBeCloseTo(0, 4);
    expect(lines[1]!.at(-1)?.y).toBeCloseTo(200, 4);
  });

  it("go through both ends of a stretch, so that a spike is seen", () => {
    const spike = [
      [0, [100]],
      [1000, [100]],
      [1010, [190]],
      [1020, [100]],
      [2000, [100]],
    ] as const;
    const ys = drawn(1, spike).lines[0]!.map(({ y }) => y);
    // ln 1.9 / ln 2 of the way from the middle to the top.
    expect(Math.min(...ys)).toBeCloseTo(100 * (1 - Math.log(1.9) / Math.log(2)), 4);
  });

  it("join sweeps of a slow sniffer, and are broken where none came for more than ten seconds", () => {
    const lifts = (gapMs: number) =>
      drawn(1, [
        [1000, [100]],
        [1000 + gapMs, [100]],
      ]).lines[0]!.filter(({ down }) => !down).length;
    expect([lifts(2000), lifts(10_000), lifts(10_200), lifts(30_000)]).toEqual([1, 1, 2, 2]);
  });

  it("end at the right edge with the newest sweep, and carry their channel's number", () => {
    const { lines, labels } = drawn(3, [
      [9000, [100, 100, 100]],
      [10_000, [101, 102, 99]],
    ]);
    for (const line of lines) expect(line.at(-1)?.x).toBe(300); // 322 less 22 for the numbers
    expect(labels.map(({ text }) => text)).toEqual(["2", "1", "3"]);
    const [first, second] = labels.map(({ y }) => y);
    expect(second! - first!).toBeGreaterThanOrEqual(12);
  });

  it("leave out numbers that find no room, never a line", () => {
    const ohm = Array.from({ length: 64 }, () => 100);
    const { lines, labels } = drawn(64, [[0, ohm]]);
    expect(lines).toHaveLength(64);
    expect(labels.length).toBeLessThanOrEqual(17); // 200 / 12, counted by hand
  });
});

/** @see WCAG 2.2, definitions of relative luminance and contrast ratio */
function contrast(one: string, other: string): number {
  const luminance = (hex: string) => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5]
      .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

it("the lines stand out from the sheet by 3 to 1 at least, in each theme (WCAG 2.2, 1.4.11)", () => {
  const css = readFileSync("src/screens/styles/tokens.css", "utf8");
  const themes = css.split("--paper:").slice(1);
  expect(themes).toHaveLength(3);
  for (const theme of themes) {
    const valueOf = (name: string) => new RegExp(`${name}: (#[0-9a-f]{6})`).exec(theme)?.[1] ?? "";
    for (const number of [1, 2, 3, 4]) {
      expect(contrast(valueOf(`--trace-${number}`), valueOf("--sheet"))).toBeGreaterThanOrEqual(3);
    }
  }
});
