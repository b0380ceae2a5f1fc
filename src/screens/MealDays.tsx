import type { MealDaysView } from "../views/mealDaysView.js";
import { MealRow } from "./parts/MealRow.js";
import { ShowMore } from "./parts/ShowMore.js";

interface Props {
  readonly view: MealDaysView;
  readonly onMore: () => void;
  readonly hrefOf: (mealId: string) => string;
  readonly photoUrlOf: (photoId: string) => string | undefined;
}

/** Days at the top of the list, so many as a first screen may show. */
const FIRST_DAYS = 8;

/** The rows of the list of meals, by day. */
export function MealDays({ view, onMore, hrefOf, photoUrlOf }: Props) {
  return (
    <>
      {view.days.map((day, index) => (
        <section
          key={day.key}
          class={index < FIRST_DAYS ? "day" : "day day--later"}
          aria-labelledby={`day-${day.key}`}
        >
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
