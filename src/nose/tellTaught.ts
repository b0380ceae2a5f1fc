import type { Sniff } from "../sniff/sniff.js";
import type { Nose } from "./nose.js";

/**
 * Tells which plates a nose was taught. One that does not name its plates is taken to know all that was sniffed before
 * it was taught: nothing may be judged by a nose that might have met it.
 */
export function tellTaught(nose: Nose): (sniff: Pick<Sniff, "plate" | "takenAt">) => boolean {
  if (nose.plateNames === undefined || nose.report.split !== "plate") {
    const taughtMs = Date.parse(nose.taughtAt);
    return ({ takenAt }) => Date.parse(takenAt) <= taughtMs;
  }
  const names = new Set(nose.plateNames);
  return ({ plate }) => names.has(plate);
}
