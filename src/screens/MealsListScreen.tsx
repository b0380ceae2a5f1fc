import type { ComponentChildren } from "preact";
import type { MealsListView } from "../views/mealsListView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Choices } from "./parts/Choices.js";
import { DayRangeFields } from "./parts/DayRangeFields.js";
import { Empty } from "./parts/Empty.js";
import { Notice } from "./parts/Notice.js";
import { SelectField } from "./parts/SelectField.js";
import { TextField } from "./parts/TextField.js";

export type FilterKey = "group" | "verdict" | "place" | "truth";

export interface MealsListCalls {
  readonly onSearch: (text: string) => void;
  /** `option` is "any" to let everything through. */
  readonly onFilter: (key: FilterKey, option: string) => void;
  readonly onDays: (from: string, upto: string) => void;
  readonly onReactionOnly: (on: boolean) => void;
  readonly onClear: () => void;
  readonly onReview: () => void;
}

interface Props {
  readonly view: MealsListView;
  readonly calls: MealsListCalls;
  /** The rows, drawn apart: a letter of the search leaves them alone. */
  readonly children: ComponentChildren;
}

/** The list of meals, with search and filters. */
export function MealsListScreen({ view, calls, children }: Props) {
  return (
    <div class="stack">
      <div class="row row--apart">
        <h1 tabIndex={-1}>{view.title}</h1>
        <Button look="quiet" onClick={calls.onReview}>
          {view.review}
        </Button>
      </div>
      {view.empty !== null && <Empty icon="meals" title={view.empty.title} text={view.empty.text} />}
      {view.filters !== null && (
        <div role="search" class="stack stack--tight">
          <TextField
            id="meal-search"
            type="search"
            label={view.search.label}
            hint={view.search.hint}
            value={view.search.value}
            onInput={calls.onSearch}
          />
          <Filters view={view.filters} calls={calls} />
        </div>
      )}
      <p role="status" class="quiet numbers">
        {view.count}
      </p>
      {view.setAside !== null && <Notice>{view.setAside}</Notice>}
      {view.noMatch !== null && (
        <div class="row row--apart">
          <p>{view.noMatch}</p>
          {view.filters !== null && view.filters.clear !== null && (
            <Button onClick={calls.onClear}>{view.filters.clear}</Button>
          )}
        </div>
      )}
      {children}
    </div>
  );
}

function Filters({
  view,
  calls,
}: {
  readonly view: NonNullable<MealsListView["filters"]>;
  readonly calls: MealsListCalls;
}) {
  const keys = ["group", "verdict", "place", "truth"] as const;
  return (
    <details class="fold">
      <summary>{view.title}</summary>
      <div class="stack">
        {keys.map((key) => (
          <SelectField
            key={key}
            id={`filter-${key}`}
            label={view[key].label}
            options={view[key].options}
            onChoose={(option) => calls.onFilter(key, option)}
          />
        ))}
        <DayRangeFields id="filter-days" view={view.days} onDays={calls.onDays} />
        <Choices
          name="filter-reaction"
          legend={view.reaction.label}
          legendHidden
          many
          options={[{ id: "reaction", label: view.reaction.label, chosen: view.reaction.on }]}
          onChoose={(_, on) => calls.onReactionOnly(on)}
        />
        {view.clear !== null && <Button onClick={calls.onClear}>{view.clear}</Button>}
      </div>
    </details>
  );
}

/** The one action of the list. */
export function MealsListActions({ label, onAdd }: { readonly label: string; readonly onAdd: () => void }) {
  return (
    <ActionBar>
      <Button look="main" big wide onClick={onAdd}>
        {label}
      </Button>
    </ActionBar>
  );
}
