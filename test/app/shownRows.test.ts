import { afterEach, expect, it, vi } from "vitest";
import { createShownRows } from "../../src/app/meals/shownRows.js";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

it("draws a screen of rows for each picture, up to two screens and more, and grows at the end alone", () => {
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  const pictures: (() => void)[] = [];
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => pictures.push(draw));
  const { shown, anew, more } = createShownRows(() => 90);
  const nextPicture = () => {
    pictures.splice(0).forEach((draw) => draw());
    vi.runAllTimers();
  };
  anew();
  const seen = [shown.value];
  // A short list has its end on the screen: that asks for no more while the first screens are still coming.
  more();
  while (pictures.length > 0) {
    nextPicture();
    seen.push(shown.value);
  }
  expect(seen).toEqual([8, 16, 24, 25]);
  more();
  expect(shown.value).toBe(75);
  more();
  expect(shown.value).toBe(90);
  anew();
  anew();
  expect(pictures).toHaveLength(1);
  expect(shown.value).toBe(8);
});
