import { fileTargets } from "./fileTargets.js";
import { gattTargets } from "./gattTargets.js";
import { recordTargets } from "./recordTargets.js";
import type { FuzzTarget } from "./runTarget.js";

/** Every decoder at the edge of the app. */
export const targets: readonly FuzzTarget[] = [...gattTargets, ...fileTargets, ...recordTargets];
