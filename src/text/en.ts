/** English, in parts that can be loaded apart. */
import { check } from "./en/check.js";
import { common } from "./en/common.js";
import { data } from "./en/data.js";
import { finding } from "./en/finding.js";
import { meals } from "./en/meals.js";
import { nose } from "./en/nose.js";
import { plate } from "./en/plate.js";
import { report } from "./en/report.js";
import { review } from "./en/review.js";
import { sniffer } from "./en/sniffer.js";
import { trouble } from "./en/trouble.js";
import { you } from "./en/you.js";

export const en = { common, plate, sniffer, check, finding, meals, review, nose, report, you, data, trouble };
