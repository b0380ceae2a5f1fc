// The frame around each screen. What it may offer while a check runs is the design's own rule: never in mid-sniff.
import { expect, it } from "vitest";
import { shellView, type ShellState } from "../../src/views/shellView.js";
import { ENGLISH } from "../browser/gallery/fixtures/words.js";

const STATE: ShellState = {
  place: "plate",
  hrefOf: (place) => `#/${place}`,
  checkRunning: false,
  updateWaiting: true,
  online: true,
  toast: null,
};

it("offers a newer app that waits, with a way to say later", () => {
  const { update } = shellView(STATE, ENGLISH);
  expect(update).toMatchObject({ now: "Use it now", later: "Later" });
});

it("offers no newer app while something is in hand, and hides the places in the middle of a sniff", () => {
  expect(shellView({ ...STATE, updateWaiting: false }, ENGLISH).update).toBeNull();
  expect(shellView({ ...STATE, checkRunning: true }, ENGLISH).places).toBeNull();
});
