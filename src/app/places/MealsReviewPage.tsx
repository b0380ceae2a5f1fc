import { useState } from "preact/hooks";
import { ReviewScreen } from "../../screens/ReviewScreen.js";
import { SelectField } from "../../screens/parts/SelectField.js";
import { reviewView } from "../../views/reviewView.js";
import type { AppModel } from "../appModel.js";
import { fileName } from "../files.js";
import { giveFile } from "../meals/giveFile.js";
import { mealTable } from "../meals/mealTable.js";
import { addressOf, MONTHS_BACK, monthsBack, periodOf, periodText, type Period } from "../meals/period.js";
import { createReviewControl } from "../meals/reviewControl.js";
import { useControl } from "../meals/useControl.js";
import { hashOf } from "../router.js";
import { Frame } from "./Frame.js";
import { MealsReport } from "./MealsReport.js";
import { MealsTrouble } from "./MealsTrouble.js";

interface Props {
  readonly app: AppModel;
  /** First and last day, as the page's address names them; empty: all meals. */
  readonly address: readonly string[];
}

/** What the meals of a period add up to, on the screen, as a table and on paper. */
export function MealsReviewPage({ app, address }: Props) {
  const period = periodOf(address);
  const [printing, setPrinting] = useState(false);
  const control = useControl(() => createReviewControl(app.ports.store, period), addressOf(period).join("/"));
  const reviewing = control.reviewing.value;
  const words = app.preferences.words.value;
  if (reviewing.kind === "failed")
    return <MealsTrouble app={app} error={reviewing.error} onRetry={control.retry} />;
  if (reviewing.kind === "counting") return <Frame app={app}>{null}</Frame>;
  const view = reviewView(reviewing.review, words);
  const days = period === null ? null : periodText(period, words.formats.locale);
  if (printing) {
    const done = () => setPrinting(false);
    return <MealsReport view={view} meals={reviewing.meals} period={days} words={words} onDone={done} />;
  }
  const calls = {
    onBack: () => app.router.go("meals"),
    onPrint: () => setPrinting(true),
    onCsv: () => {
      const name = fileName("nidor", "meals", ...addressOf(period), "") + ".csv";
      void giveFile(new File([mealTable(reviewing.meals, words)], name, { type: "text/csv" }));
    },
  };
  return (
    <Frame app={app}>
      <div class="stack">
        <PeriodChoice app={app} period={period} />
        <ReviewScreen view={view} calls={calls} hrefOf={(id) => hashOf("meals", id)} />
      </div>
    </Frame>
  );
}

const ALL = "any";

/** All meals, or the last months. */
function PeriodChoice({ app, period }: { readonly app: AppModel; readonly period: Period }) {
  const { text, formats } = app.preferences.words.value;
  const chosen = addressOf(period).join("/");
  const ready = MONTHS_BACK.map((months) => monthsBack(months, app.ports.nowMs()));
  const own = period === null || ready.some((one) => addressOf(one).join("/") === chosen) ? [] : [period];
  const options = [...own, ...ready].map((one) => {
    const id = addressOf(one).join("/");
    return { id, label: periodText(one, formats.locale), chosen: id === chosen };
  });
  return (
    <SelectField
      id="review-period"
      label={text.meals.detail.when}
      options={[{ id: ALL, label: text.meals.any, chosen: period === null }, ...options]}
      onChoose={(id) => app.router.go("meals", "review", ...(id === ALL ? [] : id.split("/")))}
    />
  );
}
