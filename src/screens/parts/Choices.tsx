interface Props {
  readonly name: string;
  readonly legend: string;
  readonly options: readonly { readonly id: string; readonly label: string; readonly chosen: boolean }[];
  /** For `many`, also called to take a choice back: `chosen` says which. */
  readonly onChoose: (id: string, chosen: boolean) => void;
  readonly many?: boolean;
  /** One below the other, for long words. */
  readonly rows?: boolean;
  readonly hint?: string | undefined;
  readonly legendHidden?: boolean;
}

/** One of a few, or several of a few. */
export function Choices({ name, legend, options, onChoose, many, rows, hint, legendHidden }: Props) {
  const hintId = hint === undefined ? undefined : `${name}-hint`;
  return (
    <fieldset class={rows ? "choices choices--rows" : "choices"} aria-describedby={hintId}>
      <legend class={legendHidden ? "unseen" : undefined}>{legend}</legend>
      <div class="choices__list">
        {options.map((option) => (
          <label key={option.id} class={many ? "choice choice--many" : "choice"}>
            <input
              type={many ? "checkbox" : "radio"}
              name={name}
              value={option.id}
              checked={option.chosen}
              onChange={(event) => onChoose(option.id, event.currentTarget.checked)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {hint !== undefined && (
        <p class="field__hint" id={hintId}>
          {hint}
        </p>
      )}
    </fieldset>
  );
}
