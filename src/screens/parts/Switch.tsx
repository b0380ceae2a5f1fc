interface Props {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

/** On or off. */
export function Switch({ id, label, hint, on, onChange }: Props) {
  return (
    <div>
      <label class="switch" for={id}>
        <strong>{label}</strong>
        <input
          id={id}
          type="checkbox"
          role="switch"
          checked={on}
          aria-describedby={hint === undefined ? undefined : `${id}-hint`}
          onChange={(event) => onChange(event.currentTarget.checked)}
        />
      </label>
      {hint !== undefined && (
        <p class="field__hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
