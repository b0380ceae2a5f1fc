import { options } from "preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { answerFirst } from "../../src/app/answerFirst.js";

const before = options.debounceRendering;
const pictures: (() => void)[] = [];

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => pictures.push(draw));
  answerFirst();
});

afterEach(() => {
  if (before === undefined) delete options.debounceRendering;
  else options.debounceRendering = before;
  pictures.length = 0;
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

function handling(event: object | undefined) {
  vi.stubGlobal("window", { event });
  const draw = vi.fn();
  options.debounceRendering?.(draw);
  return draw;
}

it.each(["click", "input", "change", "keydown"])(
  "draws what a %s changes after the next picture",
  async (type) => {
    const draw = handling({ type, isTrusted: true });
    await Promise.resolve();
    expect(draw).not.toHaveBeenCalled();
    pictures.splice(0).forEach((show) => show());
    expect(draw).not.toHaveBeenCalled();
    vi.runAllTimers();
    expect(draw).toHaveBeenCalledOnce();
  },
);

it.each([
  ["nobody touched", undefined],
  ["is another page", { type: "hashchange", isTrusted: true }],
  ["a script clicked", { type: "click", isTrusted: false }],
])("draws at once what %s", async (_what, event) => {
  const draw = handling(event);
  await Promise.resolve();
  expect(draw).toHaveBeenCalledOnce();
  expect(pictures).toEqual([]);
});
