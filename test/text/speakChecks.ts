/** Speaks every state of a running check, and all that is read out of one. */
import type { CheckState } from "../../src/flows/checkState.js";
import type { Words } from "../../src/text/catalogue.js";
import { announcementView } from "../../src/views/announcementView.js";
import { checkView } from "../../src/views/checkView.js";
import { NOT_RECONNECTING } from "../../src/views/reconnectView.js";
import { plateFinding } from "../browser/gallery/fixtures/findings.js";
import * as checks from "../browser/gallery/fixtures/checks.js";

export function speakChecks(words: Words): void {
  const context = {
    practice: true,
    isJar: false,
    practiceSpeed: 8,
    hasAllergy: true,
    acceptedMissRate: 0.05,
    likelyMs: 1000,
    snifferLost: false,
    reconnecting: NOT_RECONNECTING,
    countdown: null,
  };
  for (const cause of checks.INTERRUPT_CAUSES) checkView(checks.interruptedBy(cause, true), context, words);
  for (const why of ["otherSniffer", "restarted", "runEnded", "gapTooLong"] as const)
    checkView(checks.interruptedBy("linkLost", true, why), context, words);
  checkView(
    { ...checks.OVER_PLATE, countingDown: true } as CheckState,
    { ...context, isJar: true, countdown: 2 },
    words,
  );
  const settled = { ...checks.HEADSPACE, settled: true };
  for (const state of [settled, { ...checks.HEADSPACE, live: null }, checks.OVER_PLATE])
    for (const isJar of [false, true])
      checkView(state as typeof checks.OVER_PLATE, { ...context, isJar }, words);
  for (const why of ["drifting", "scattered"] as const)
    checkView(
      { ...checks.CLEAN_AIR_DRIFT, steadiness: { steady: false, why, drift: 0.1, scatter: 0.1 } } as never,
      context,
      words,
    );
  speakAnnouncements(words);
}

function speakAnnouncements(words: Words): void {
  const interrupted = checks.interruptedBy("linkLost", true);
  const running = [checks.WARMING, checks.CLEAN_AIR_DRIFT, checks.OVER_PLATE, checks.HEADSPACE, interrupted];
  const counting = { ...checks.OVER_PLATE, countingDown: true } as CheckState;
  for (const state of [...running, counting, checks.doneWith(plateFinding())])
    for (const isJar of [false, true]) announcementView(state, { isJar, countDownS: 3 }, words);
}
