/** Was der erste Bildschirm sagt. */
import type { FirstCatalogue } from "../catalogue.js";
import { common } from "./common.js";
import { firstRun } from "./firstRun.js";
import { plate } from "./plate.js";
import { sniffer } from "./sniffer.js";
import { trouble } from "./trouble.js";

export const first: FirstCatalogue = { common, firstRun, plate, sniffer, trouble };
