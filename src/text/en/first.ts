/** What the first screen says: Plate before a check, the first run, the frame. It is here before anything else. */
import { common } from "./common.js";
import { firstRun } from "./firstRun.js";
import { plate } from "./plate.js";
import { sniffer } from "./sniffer.js";
import { trouble } from "./trouble.js";

export const first = { common, firstRun, plate, sniffer, trouble };
