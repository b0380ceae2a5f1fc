import type { Pen } from "../../src/screens/parts/drawTraces.js";

/** Draws nothing and remembers where the pen went. */
export function countingPen() {
  const lines: { x: number; y: number; down: boolean }[][] = [];
  const labels: { text: string; x: number; y: number }[] = [];
  const pen: Pen = {
    lineWidth: 1,
    strokeStyle: "",
    fillStyle: "",
    font: "",
    textBaseline: "middle",
    beginPath: () => void lines.push([]),
    clearRect: () => undefined,
    fillText: (text, x, y) => void labels.push({ text, x, y }),
    lineTo: (x, y) => void lines.at(-1)?.push({ x, y, down: true }),
    moveTo: (x, y) => void lines.at(-1)?.push({ x, y, down: false }),
    setLineDash: () => undefined,
    stroke: () => undefined,
  };
  return { pen, lines, labels };
}

export const FIELD = {
  width: 322,
  height: 200,
  colours: ["a", "b", "c", "d"],
  rule: "rule",
  ink: "ink",
  font: "12px sans-serif",
};
