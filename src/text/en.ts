/** English, in parts that can be loaded apart. */
import { check } from "./en/check.js";
import { common } from "./en/common.js";
import { finding } from "./en/finding.js";
import { plate } from "./en/plate.js";
import { sniffer } from "./en/sniffer.js";

export const en = { common, plate, sniffer, check, finding };
