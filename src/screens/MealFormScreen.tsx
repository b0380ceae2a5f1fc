import type { MealFormView } from "../views/mealFormView.js";
import { Button } from "./parts/Button.js";
import { Choices } from "./parts/Choices.js";
import { Icon } from "./parts/Icon.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { TextField } from "./parts/TextField.js";

export type MealField = "dish" | "place" | "when" | "note" | "claims";

export interface MealFormCalls {
  readonly onField: (field: MealField, value: string) => void;
  readonly onPhoto: (file: File) => void;
  readonly onRemovePhoto: (photoId: string) => void;
  /** "open", or a meal outcome. */
  readonly onOutcome: (option: string) => void;
}

interface Props {
  readonly view: MealFormView;
  readonly calls: MealFormCalls;
  readonly photoUrlOf: (photoId: string) => string | undefined;
}

/** A meal as a form; its actions are `FormActions`. */
export function MealFormScreen({ view, calls, photoUrlOf }: Props) {
  const field = (name: MealField) => (value: string) => calls.onField(name, value);
  return (
    <form class="stack" onSubmit={(event) => event.preventDefault()}>
      <PageHead title={view.title} />
      {view.fault !== null && (
        <Notice strong live>
          {view.fault}
        </Notice>
      )}
      <TextField id="meal-dish" label={view.dish.label} value={view.dish.value} onInput={field("dish")} />
      <TextField
        id="meal-place"
        label={view.place.label}
        hint={view.place.hint}
        value={view.place.value}
        onInput={field("place")}
      />
      {view.place.suggestions.length > 0 && (
        <div class="row row--picks">
          {view.place.suggestions.map((place) => (
            <Button key={place} onClick={() => calls.onField("place", place)}>
              {place}
            </Button>
          ))}
        </div>
      )}
      <TextField
        id="meal-when"
        type="datetime-local"
        label={view.when.label}
        value={view.when.value}
        fault={view.when.fault}
        onInput={field("when")}
      />
      <Choices
        name="outcome"
        legend={view.outcome.label}
        options={view.outcome.options}
        onChoose={calls.onOutcome}
      />
      <TextField
        id="meal-claims"
        label={view.claims.label}
        hint={view.claims.hint}
        value={view.claims.value}
        lines={2}
        onInput={field("claims")}
      />
      <TextField
        id="meal-note"
        label={view.note.label}
        value={view.note.value}
        lines={3}
        maxLength={5000}
        onInput={field("note")}
      />
      <Photos view={view.photos} calls={calls} photoUrlOf={photoUrlOf} />
    </form>
  );
}

function Photos({
  view,
  calls,
  photoUrlOf,
}: {
  readonly view: MealFormView["photos"];
  readonly calls: MealFormCalls;
  readonly photoUrlOf: Props["photoUrlOf"];
}) {
  return (
    <fieldset class="choices stack stack--tight">
      <legend>{view.label}</legend>
      {view.items.map((photo) => (
        <div key={photo.id} class="photo-item">
          <img class="photo" src={photoUrlOf(photo.id)} alt={photo.label} />
          <Button look="quiet" onClick={() => calls.onRemovePhoto(photo.id)}>
            {photo.remove}
          </Button>
        </div>
      ))}
      <label class="file">
        <input
          type="file"
          accept="image/*"
          aria-describedby="photo-hint"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file !== undefined) calls.onPhoto(file);
            event.currentTarget.value = "";
          }}
        />
        <span class="button">
          <Icon name="camera" />
          {view.add}
        </span>
      </label>
      <p class="field__hint" id="photo-hint">
        {view.hint}
      </p>
      {view.fault !== undefined && (
        <p class="field__fault" role="alert">
          {view.fault}
        </p>
      )}
    </fieldset>
  );
}
