import type { Words } from "../text/catalogue.js";

/** A stretch of time in minutes and seconds, rounded up to a whole second: never "0 s" while time is left. */
export function durationText(ms: number, { text }: Words<"common">): string {
  const seconds = Math.max(0, Math.ceil(ms / 1000));
  return text.common.duration(Math.floor(seconds / 60), seconds % 60);
}
