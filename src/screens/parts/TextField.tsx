import { describedBy, Field } from "./Field.js";

interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly type?: "text" | "search" | "datetime-local" | "date" | "number" | "password";
  readonly lines?: number;
  readonly maxLength?: number;
  readonly autocomplete?: string;
}

/** One line of text, or several. */
export function TextField(props: Props) {
  const { id, label, value, onInput, hint, fault, type = "text", lines, maxLength = 500 } = props;
  const shared = {
    id,
    value,
    maxLength,
    class: "input",
    "aria-describedby": describedBy(id, hint, fault),
    "aria-invalid": fault === undefined ? undefined : ("true" as const),
  };
  return (
    <Field id={id} label={label} hint={hint} fault={fault}>
      {lines === undefined ? (
        <input
          {...shared}
          // The element's types tell each kind of input apart; all of these take the same attributes.
          type={type as "text"}
          autocomplete={props.autocomplete ?? "off"}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
      ) : (
        <textarea {...shared} rows={lines} onInput={(event) => onInput(event.currentTarget.value)} />
      )}
    </Field>
  );
}
