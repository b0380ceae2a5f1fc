import { claimTexts } from "../../views/mealFormView.js";
import type { AppModel } from "../appModel.js";
import { isPractice } from "../practice.js";
import type { FormStart } from "./beginForm.js";
import { fieldTime } from "./localTime.js";
import { originOf } from "./mealOrigin.js";

/** How the form for a new meal begins: with the finding of the check that just ended, or empty. */
export function newMealStart(app: AppModel): FormStart {
  const check = app.check.state.value;
  if (check.phase !== "done") return { subject: { kind: "new" }, origin: null, sniff: null, filled: {} };
  const { sniff, finding } = check;
  const active = app.noses.active.value;
  const served = app.served.value;
  const words = app.preferences.words.value;
  const noseId = active.kind === "ready" ? active.nose.id : null;
  return {
    subject: { kind: "check", sniffId: sniff.id },
    origin: originOf(finding, app.diet.cautions.value, noseId, isPractice(sniff)),
    sniff,
    filled: {
      dish: sniff.dish === "" ? (served?.name ?? "") : sniff.dish,
      // Where a meal was eaten stands in every list: nobody takes a practice plate for a real one.
      place: isPractice(sniff) ? words.text.plate.practiceTitle : "",
      when: fieldTime(sniff.takenAt),
      claims: claimTexts(app.plate.claims.value, words).join("\n"),
    },
  };
}

export const editStart = (mealId: string): FormStart => ({
  subject: { kind: "edit", mealId },
  origin: null,
  sniff: null,
  filled: {},
});
