import { useEffect } from "preact/hooks";
import type { Meal } from "../../meals/meal.js";
import { PageHead } from "../../screens/parts/PageHead.js";
import { RateLine } from "../../screens/parts/RateLine.js";
import type { Words } from "../../text/catalogue.js";
import { mealDetailView } from "../../views/mealDetailView.js";
import { mealRowView } from "../../views/mealRowView.js";
import type { ReviewView } from "../../views/reviewView.js";
import { printPage } from "../meals/printPage.js";

interface Props {
  readonly view: ReviewView;
  /** Newest first. */
  readonly meals: readonly Meal[];
  /** null: all meals. */
  readonly period: string | null;
  readonly words: Words;
  readonly onDone: () => void;
}

/** The report on paper: no frame, no buttons but the way back, every meal of the period. */
export function MealsReport({ view, meals, period, words, onDone }: Props) {
  useEffect(() => printPage(onDone), []);
  return (
    <main class="app__main stack stack--wide">
      <PageHead
        title={view.out.title}
        text={[period, view.text].filter((part) => part !== null).join(". ")}
        back={{ label: view.title, onBack: onDone }}
      />
      <section class="stack">
        <h2>{view.reaction.title}</h2>
        <p>{view.reaction.text}</p>
        <p>{view.reaction.nothing}</p>
        {view.reaction.none !== null && <p>{view.reaction.none}</p>}
        {view.reaction.hints.map(({ food, lines }) => (
          <p key={food}>{lines.join(". ")}</p>
        ))}
        <p>{view.reaction.doctor}</p>
      </section>
      <section class="stack">
        <h2>{view.field.title}</h2>
        <p>{view.field.text}</p>
        {view.field.groups.map((group) => (
          <div key={group.group}>
            <h3>{group.name}</h3>
            {group.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
            {group.rates.map((rate) => (
              <RateLine key={rate.label} {...rate} />
            ))}
          </div>
        ))}
      </section>
      <section class="stack">
        <h2>{words.text.meals.title}</h2>
        {meals.map((meal) => (
          <ReportedMeal key={meal.id} meal={meal} words={words} />
        ))}
      </section>
    </main>
  );
}

function ReportedMeal({ meal, words }: { readonly meal: Meal; readonly words: Words }) {
  const detail = mealDetailView(
    { meal, allergyGroups: [], sample: "none", nowMs: 0, practice: false, suggestions: [] },
    words,
  );
  const findings = mealRowView(meal, words).findings.map(({ text }) => text);
  const facts = detail.facts.map(({ label, value }) => `${label}: ${value}`);
  const told = [
    ...(detail.claims === null ? [] : [`${detail.claims.label}: ${detail.claims.items.join("; ")}`]),
    ...(findings.length === 0 ? [] : [findings.join("; ")]),
    ...(meal.truth === null ? [] : [`${detail.truth.title}: ${detail.truth.lines.join(" ")}`]),
    ...(meal.reaction === null ? [] : [`${detail.reaction.title}: ${detail.reaction.lines.join("; ")}`]),
    ...(detail.note === null ? [] : [`${detail.note.label}: ${detail.note.text}`]),
  ];
  return (
    <article>
      <h3>{detail.title}</h3>
      <p class="numbers">{facts.join(" · ")}</p>
      {told.map((line) => (
        <p key={line} class="own-words">
          {line}
        </p>
      ))}
    </article>
  );
}
