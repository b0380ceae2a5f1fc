import type { ReviewPeriodView } from "../views/reviewPeriodView.js";
import { Button } from "./parts/Button.js";
import { DayRangeFields } from "./parts/DayRangeFields.js";
import { SelectField } from "./parts/SelectField.js";

export interface ReviewPeriodCalls {
  /** "any", "own" or the id of a ready choice. */
  readonly onChoose: (id: string) => void;
  readonly onDays: (from: string, upto: string) => void;
  readonly onShow: () => void;
}

interface Props {
  readonly view: ReviewPeriodView;
  readonly calls: ReviewPeriodCalls;
}

/** Which days the review and its report look at. */
export function ReviewPeriod({ view, calls }: Props) {
  return (
    <div class="stack stack--tight">
      <SelectField id="review-period" label={view.label} options={view.options} onChoose={calls.onChoose} />
      {view.own !== null && (
        <form
          class="stack stack--tight"
          onSubmit={(event) => {
            event.preventDefault();
            calls.onShow();
          }}
        >
          <DayRangeFields id="review-days" view={view.own.fields} onDays={calls.onDays} />
          <Button onClick={calls.onShow}>{view.own.show}</Button>
        </form>
      )}
    </div>
  );
}
