// What is read out of a check by itself. WCAG 2.2, 4.1.3 (status messages).
import { expect, it } from "vitest";
import type { CheckState } from "../../src/flows/checkState.js";
import { announcementView } from "../../src/views/announcementView.js";
import { doneWith, HEADSPACE, OVER_PLATE } from "../browser/gallery/fixtures/checks.js";
import { NOT_SMELLED, plateFinding, SMELLED, UNCERTAIN } from "../browser/gallery/fixtures/findings.js";
import { ENGLISH, GERMAN } from "../browser/gallery/fixtures/words.js";

const said = (state: CheckState, isJar = false, words = ENGLISH) =>
  announcementView(state, { isJar, countDownS: 3 }, words);

it("says all groups of a finding, the loudest kind first, and never an uncertain one without its warning", () => {
  const finding = plateFinding(NOT_SMELLED, UNCERTAIN, { ...NOT_SMELLED, group: "egg" }, SMELLED);
  expect(said(doneWith(finding))).toBe(
    "The finding is there. Meat: Smelled. Shellfish: Uncertain, do not rely on this. Fish and egg: Not smelled.",
  );
  expect(said(doneWith(finding), false, GERMAN)).toBe(
    "Der Befund ist da. Fleisch: Gerochen. Schalen- und Weichtiere: Unsicher, verlass dich nicht darauf. Fisch und Ei: Nicht gerochen.",
  );
  expect(said(doneWith(plateFinding()))).toBe("The finding is there. No group was asked for.");
});

it("has no finding to say of the check jar", () => {
  expect(said(doneWith(plateFinding(SMELLED)), true)).toBe("The check jar has been sniffed.");
});

it("says the same line for as long as a phase lasts, whatever comes in", () => {
  if (HEADSPACE.phase !== "headspace") throw new Error("the fixture is of another phase");
  const later: CheckState = { ...HEADSPACE, elapsedMs: 40_000, live: plateFinding(SMELLED), settled: true };
  expect(said(later)).toBe(said(HEADSPACE));
  expect(said({ ...OVER_PLATE, countingDown: true } as CheckState)).toMatch(/^It begins in 3 seconds/);
  expect(said({ phase: "idle" })).toBe("");
});
