import { signal } from "@preact/signals";
import { afterEach, expect, it, vi } from "vitest";
import { afterPaint } from "../../src/app/afterPaint.js";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

it("follows once the picture is there, and then with the last value alone", () => {
  vi.useFakeTimers();
  const pictures: (() => void)[] = [];
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => pictures.push(draw));
  const typed = signal("b");
  const read = afterPaint(typed);
  expect(read.value).toBe("b");
  typed.value = "br";
  typed.value = "bro";
  expect(read.value).toBe("b");
  pictures.splice(0).forEach((draw) => draw());
  expect(read.value).toBe("b");
  vi.runAllTimers();
  expect(read.value).toBe("bro");
  expect(pictures).toEqual([]);
  typed.value = "broth";
  expect(pictures).toHaveLength(1);
});

it("follows at once where nothing is drawn", () => {
  const typed = signal("b");
  const read = afterPaint(typed);
  typed.value = "br";
  expect(read.value).toBe("br");
});
