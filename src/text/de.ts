/** Deutsch, in Teilen wie das Englische. */
import type { Catalogue } from "./catalogue.js";
import { check } from "./de/check.js";
import { common } from "./de/common.js";
import { data } from "./de/data.js";
import { finding } from "./de/finding.js";
import { meals } from "./de/meals.js";
import { nose } from "./de/nose.js";
import { plate } from "./de/plate.js";
import { report } from "./de/report.js";
import { review } from "./de/review.js";
import { sniffer } from "./de/sniffer.js";
import { trouble } from "./de/trouble.js";
import { you } from "./de/you.js";

export const de: Catalogue = {
  common,
  plate,
  sniffer,
  check,
  finding,
  meals,
  review,
  nose,
  report,
  you,
  data,
  trouble,
};
