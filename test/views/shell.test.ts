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
  kept: true,
  pieceMissing: false,
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

it("says that all works without a network only where all is on the phone", () => {
  const networkNotice = (state: Partial<ShellState>) => shellView({ ...STATE, ...state }, ENGLISH).network;
  const missing = expect.stringMatching(/^A part of the app is still missing. It comes by itself/);
  expect(networkNotice({})).toBeNull();
  expect(networkNotice({ kept: false })).toBeNull();
  expect(networkNotice({ online: false })).toBe("No network. Everything here works without it.");
  expect(networkNotice({ online: false, kept: false })).toEqual(missing);
  expect(networkNotice({ online: false, pieceMissing: true })).toEqual(missing);
  expect(networkNotice({ pieceMissing: true })).toEqual(missing);
});
