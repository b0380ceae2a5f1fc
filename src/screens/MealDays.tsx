import type { MealDaysView } from "../views/mealDaysView.js";
import { MealRow } from "./parts/MealRow.js";
import { ShowMore } from "./parts/ShowMore.js";

interface Props {
  readonly view: MealDaysView;
  readonly onMore: () => void;
  readonly hrefOf: (mealId: string) => string;
  readonly photoUrlOf: (photoId: string) => string | undefined;
}

/** The rows of the list of meals, by day. */
export function MealDays({ view, onMore, hrefOf, photoUrlOf }: Props) {
  return (
    <>
      {view.days.map((day) => (
        <section key={day.key} class="day" aria-labelledby={`day-${day.key}`}>
          <h2 id={`day-${day.key}`}>{day.heading}</h2>
          <ul>
            {day.meals.map((meal) => (
              <li key={meal.id}>
                <MealRow
                  view={meal}
                  href={hrefOf(meal.id)}
                  photoUrl={meal.photoId === null ? undefined : photoUrlOf(meal.photoId)}
                />
              </li>
            ))}
          </ul>
        </section>
      ))}
      {view.more !== null && <ShowMore label={view.more} onMore={onMore} />}
    </>
  );
}
