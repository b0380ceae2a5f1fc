/** What judges a sniff and reads a nose: one piece, loaded after the first screen stands. */
export { findPlate } from "../finding/findPlate.js";
export { groupJudge } from "../finding/groupJudge.js";
export { likelyTimeMs } from "../finding/likelyTime.js";
export { shownMisses } from "../finding/shownMisses.js";
export { settled } from "../finding/settled.js";
export { parseNose, serialiseNose } from "../nose/noseFile.js";
