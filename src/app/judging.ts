/** What judges a sniff and reads a nose: one piece, loaded after the first screen stands. */
export { findPlate } from "../finding/findPlate.js";
export { settled } from "../finding/settled.js";
export { parseNose, serialiseNose } from "../nose/noseFile.js";
