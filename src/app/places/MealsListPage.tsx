import { useEffect, useLayoutEffect } from "preact/hooks";
import { MealDays } from "../../screens/MealDays.js";
import { MealsListActions, MealsListScreen } from "../../screens/MealsListScreen.js";
import { mealDaysView } from "../../views/mealDaysView.js";
import { mealsListView } from "../../views/mealsListView.js";
import type { AppModel } from "../appModel.js";
import type { MealsList } from "../meals/mealsList.js";
import { mealsListOf } from "../meals/mealsListOf.js";
import { createPhotoUrls, type PhotoUrls, smallPhoto } from "../meals/photoUrls.js";
import { useControl } from "../meals/useControl.js";
import { hashOf } from "../router.js";
import { BackupReminderNote } from "./BackupReminderNote.js";
import { Frame } from "./Frame.js";
import { MealsTrouble } from "./MealsTrouble.js";

/** All meals, by day. */
export function MealsListPage({ app }: { readonly app: AppModel }) {
  const list = mealsListOf(app);
  const photos = useControl(() => createPhotoUrls(smallPhoto(app.ports.store)), "list");
  useScrollKept(list);
  const reading = list.reading.value;
  if (reading.kind === "failed") return <MealsTrouble app={app} error={reading.error} onRetry={list.retry} />;
  if (reading.kind === "reading" && list.total.value === 0) return <Frame app={app}>{null}</Frame>;
  const view = mealsListView(
    {
      matching: list.matching.value.length,
      total: list.total.value,
      filter: list.filter.value,
      days: list.days.value,
      daysFault: list.daysFault.value,
      setAside: list.setAside.value,
      groups: list.groups.value,
      places: list.places.value,
    },
    app.preferences.words.value,
  );
  const calls = {
    onSearch: list.search,
    onFilter: list.narrow,
    onDays: list.between,
    onReactionOnly: list.reactionOnly,
    onClear: list.clear,
    onReview: () => app.router.go("meals", "review"),
  };
  const actions = <MealsListActions label={view.add} onAdd={() => app.router.go("meals", "new")} />;
  return (
    <Frame app={app} actions={actions}>
      <div class="stack">
        <BackupReminderNote app={app} />
        <MealsListScreen view={view} calls={calls}>
          <Rows app={app} photoUrlOf={photos.urlOf} />
        </MealsListScreen>
      </div>
    </Frame>
  );
}

interface RowsProps {
  readonly app: AppModel;
  readonly photoUrlOf: PhotoUrls["urlOf"];
}

/** A component of its own: it is drawn anew when other rows are to be shown, and at nothing else. */
function Rows({ app, photoUrlOf }: RowsProps) {
  const list = mealsListOf(app);
  const view = mealDaysView(
    {
      matching: list.matching.value,
      shown: list.shown.value,
      practice: list.practice.value,
      nowMs: app.ports.nowMs(),
    },
    app.preferences.words.value,
  );
  return (
    <MealDays view={view} onMore={list.more} hrefOf={(id) => hashOf("meals", id)} photoUrlOf={photoUrlOf} />
  );
}

const scrolled = new WeakMap<MealsList, number>();

/** Coming back from a meal leads to where the list was left. */
function useScrollKept(list: MealsList): void {
  useLayoutEffect(() => scrollTo(0, scrolled.get(list) ?? 0), [list]);
  useEffect(() => {
    const remember = () => void scrolled.set(list, scrollY);
    addEventListener("scroll", remember, { passive: true });
    return () => removeEventListener("scroll", remember);
  }, [list]);
}
