/** Whether a sniff that a lost link cut in two may go on: is it the same run, and was the hole small enough? */
import { sameChannels } from "../kernel/channel.js";
import { deviceTimeFrom } from "../profile/deviceTime.js";
import type { ResumeRefusal, RunAfterLoss, RunningState } from "./checkState.js";
import type { ConnectedSniffer } from "./snifferState.js";

/** Longest hole over the plate that leaves the rise readable: a few sweeps of a minute's sniff. Common practice. */
export const HEADSPACE_GAP_MS = 10_000;
/** Longest hole in clean air that a baseline is read across: half of the window that must be steady. Common practice. */
export const CLEAN_AIR_GAP_MS = 10_000;
/** A steady baseline holds while the sniffer lay idle in the same air; its age is judged with the sniff as always. */
export const STEADY_GAP_MS = 60_000;

/**
 * Compares a sniffer before the loss with what answers now. Same boot: its time did not go back and its run number is
 * the one we asked for; after losing power a sniffer has run 0 and counts its time from 0 (PROFILE.md 8).
 *
 * @param before - as known when the link was lost
 * @param after - freshly opened, its status read
 */
export function runAfterLoss(before: ConnectedSniffer, after: ConnectedSniffer): RunAfterLoss {
  const broken = (why: Exclude<ResumeRefusal, "gapTooLong">): RunAfterLoss => ({ kind: "broken", why });
  if (before.layout.snifferId !== after.layout.snifferId) return broken("otherSniffer");
  if (!sameChannels(before.layout.channels, after.layout.channels)) return broken("otherSniffer");
  const lastMs = lastDeviceTime(before);
  if (after.status === null || lastMs === null || before.assembly === null) return broken("runEnded");
  const gapMs = deviceTimeFrom(lastMs, after.status.deviceTimeMs);
  if (gapMs < 0) return broken("restarted");
  if (after.status.state !== "measuring" || after.status.run !== before.lastRun) {
    return broken(after.status.run === 0 ? "restarted" : "runEnded");
  }
  return { kind: "sameRun", gapMs };
}

/** What to do with a check that stood still. */
export type AfterLoss =
  | { readonly kind: "goOn" }
  | { readonly kind: "beginAgain" } // nothing over the plate was recorded: a fresh run loses nothing
  | { readonly kind: "keepPart"; readonly why: ResumeRefusal };

/** Longest hole in each phase; warm-up records nothing, so any will do. */
const LONGEST_GAP_MS = {
  warming: Number.POSITIVE_INFINITY,
  cleanAir: CLEAN_AIR_GAP_MS,
  overPlate: STEADY_GAP_MS,
  headspace: HEADSPACE_GAP_MS,
} as const;

/** The rule: the same run and a small hole go on; otherwise what was recorded over a plate is kept as it is. */
export function afterLoss(during: RunningState["phase"], run: RunAfterLoss): AfterLoss {
  if (run.kind === "sameRun" && run.gapMs <= LONGEST_GAP_MS[during]) return { kind: "goOn" };
  if (run.kind === "broken" && run.why === "otherSniffer") return { kind: "keepPart", why: "otherSniffer" };
  if (during !== "headspace") return { kind: "beginAgain" };
  return { kind: "keepPart", why: run.kind === "broken" ? run.why : "gapTooLong" };
}

/** The sniffer that answers now, with what was under way in the same run; a broken run takes only the counts along. */
export function rejoined(
  before: ConnectedSniffer,
  after: ConnectedSniffer,
  run: RunAfterLoss,
): ConnectedSniffer {
  if (before.layout.snifferId !== after.layout.snifferId) return after;
  const { health, recent } = before;
  if (run.kind === "broken") return { ...after, health, recent };
  return { ...after, health, recent, lastRun: before.lastRun, assembly: before.assembly };
}

/** The latest device time known, as sent; null before the first. */
export function lastDeviceTime({ assembly, status }: ConnectedSniffer): number | null {
  const swept = assembly?.gathering.clock?.sentMs ?? null;
  const told = status?.deviceTimeMs ?? null;
  if (swept === null || told === null) return swept ?? told;
  return deviceTimeFrom(told, swept) > 0 ? swept : told;
}
