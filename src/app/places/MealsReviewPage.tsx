import { useState } from "preact/hooks";
import { ReviewScreen } from "../../screens/ReviewScreen.js";
import { reviewView } from "../../views/reviewView.js";
import type { AppModel } from "../appModel.js";
import { fileName } from "../files.js";
import { giveFile } from "../meals/giveFile.js";
import { mealTable } from "../meals/mealTable.js";
import { addressOf, periodOf, periodText } from "../meals/period.js";
import { createReviewControl } from "../meals/reviewControl.js";
import { useControl } from "../meals/useControl.js";
import { hashOf } from "../router.js";
import { Frame } from "./Frame.js";
import { MealsReport } from "./MealsReport.js";
import { MealsTrouble } from "./MealsTrouble.js";
import { ReviewPeriodChoice } from "./ReviewPeriodChoice.js";

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
  const view = reviewView(reviewing.review, words, period !== null);
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
      <ReviewScreen view={view} calls={calls} hrefOf={(id) => hashOf("meals", id)}>
        <ReviewPeriodChoice app={app} period={period} />
      </ReviewScreen>
    </Frame>
  );
}
