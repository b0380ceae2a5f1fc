import { describedBy, Field } from "./Field.js";

interface Props {
  readonly id: string;
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly label: string; readonly chosen: boolean }[];
  readonly onChoose: (id: string) => void;
  readonly hint?: string | undefined;
}

/** One of many, in the system's own list. */
export function SelectField({ id, label, options, onChoose, hint }: Props) {
  return (
    <Field id={id} label={label} hint={hint}>
      <select
        id={id}
        class="input"
        value={options.find((option) => option.chosen)?.id ?? ""}
        aria-describedby={describedBy(id, hint, undefined)}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {options.map((option) => (
          <option key={option.id} value={option.id} selected={option.chosen}>
            {option.label}
          </option>
        ))}
      </select>
    </Field>
  );
}
