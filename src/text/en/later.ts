/** What every other screen says: it comes after the first screen stands. */
import { check } from "./check.js";
import { data } from "./data.js";
import { diet } from "./diet.js";
import { finding } from "./finding.js";
import { meals } from "./meals.js";
import { nose } from "./nose.js";
import { offer } from "./offer.js";
import { practice } from "./practice.js";
import { report } from "./report.js";
import { review } from "./review.js";
import { transfer } from "./transfer.js";
import { you } from "./you.js";

export const later = {
  check,
  finding,
  meals,
  review,
  nose,
  offer,
  practice,
  report,
  transfer,
  you,
  diet,
  data,
};
