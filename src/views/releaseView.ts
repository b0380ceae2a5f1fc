import { isClearing, isStuck, RELEASE_LIMIT_MS, type ReleaseState } from "../flows/releaseState.js";
import type { Words } from "../text/catalogue.js";
import { durationText } from "./durationText.js";

/** How far the sniffer is on its way back to clean air. */
export interface ReleaseView {
  readonly text: string;
  /** Something new to be read out, and not the same with less time left. */
  readonly isNews: boolean;
  /** What a check begun now costs; null where it costs nothing. */
  readonly cost: string | null;
}

/** A fit is not good to the second: told in steps of ten seconds, beyond two minutes of thirty. */
const FINE_MS = 10_000;
const COARSE_MS = 30_000;
const COARSE_FROM_MS = 120_000;

/** Words of the release; null where nothing is followed. */
export function releaseView(state: ReleaseState, words: Words<"common" | "plate">): ReleaseView | null {
  if (state.kind === "off") return null;
  const { release } = words.text.plate;
  const isNews = state.kind === "back" || isStuck(state);
  return { text: said(state, words), isNews, cost: isClearing(state) ? release.cost : null };
}

function said(state: Exclude<ReleaseState, { kind: "off" }>, words: Words<"common" | "plate">): string {
  const { release } = words.text.plate;
  if (state.kind === "back") return release.back;
  if (state.kind === "gaveUp") return release.gaveUp(durationText(RELEASE_LIMIT_MS, words));
  if (isStuck(state)) return release.stuck;
  if (state.kind === "purging" || state.now.kind !== "releasing") return release.notKnown;
  return release.left(durationText(roundedUp(state.now.leftMs), words));
}

function roundedUp(leftMs: number): number {
  const stepMs = leftMs > COARSE_FROM_MS ? COARSE_MS : FINE_MS;
  return Math.max(1, Math.ceil(leftMs / stepMs)) * stepMs;
}
