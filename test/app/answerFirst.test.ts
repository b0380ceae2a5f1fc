import { options } from "preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { answerFirst } from "../../src/app/answerFirst.js";

const before = options.debounceRendering;
const pictures: (() => void)[] = [];
let click: (event: object) => void = () => undefined;

class Fold {
  open = false;
}
class Control {
  constructor(private readonly summary: { readonly parentElement: Fold } | null) {}
  closest = () => this.summary;
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => pictures.push(draw));
  vi.stubGlobal("Element", Control);
  vi.stubGlobal("HTMLDetailsElement", Fold);
  vi.stubGlobal("addEventListener", (_type: string, listener: typeof click) => (click = listener));
  answerFirst();
});

function nextPicture(): void {
  pictures.splice(0).forEach((show) => show());
  vi.runAllTimers();
}

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

it("opens and closes a fold after the next picture, and leaves every other click to the browser", () => {
  const fold = new Fold();
  const preventDefault = vi.fn();
  const tap = (target: object) => click({ target, defaultPrevented: false, preventDefault });
  for (const isOpen of [true, false]) {
    tap(new Control({ parentElement: fold }));
    expect(fold.open).toBe(!isOpen);
    nextPicture();
    expect(fold.open).toBe(isOpen);
  }
  expect(preventDefault).toHaveBeenCalledTimes(2);
  tap(new Control(null));
  expect(preventDefault).toHaveBeenCalledTimes(2);
  expect(pictures).toEqual([]);
});
