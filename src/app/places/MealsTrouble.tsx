import { Button } from "../../screens/parts/Button.js";
import { Empty } from "../../screens/parts/Empty.js";
import { PageHead } from "../../screens/parts/PageHead.js";
import type { StoreError } from "../../store/storeError.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "./Frame.js";

interface TroubleProps {
  readonly app: AppModel;
  readonly error: StoreError;
  readonly onRetry: () => void;
}

/** The store could not be read: what it is, and the way to try again. */
export function MealsTrouble({ app, error, onRetry }: TroubleProps) {
  const { common, trouble } = app.preferences.words.value.text;
  return (
    <Frame app={app}>
      <Empty icon="meals" title={common.failedTitle} text={trouble.kinds[error.kind]}>
        <Button onClick={onRetry}>{common.tryAgain}</Button>
      </Empty>
    </Frame>
  );
}

/** The meal of this address is not here. */
export function MealsMissing({ app }: { readonly app: AppModel }) {
  const { meals } = app.preferences.words.value.text;
  return (
    <Frame app={app}>
      <PageHead
        title={meals.notFoundTitle}
        back={{ label: meals.back, onBack: () => app.router.go("meals") }}
      />
      <p>{meals.notFoundText}</p>
    </Frame>
  );
}
