import type { ComponentChildren } from "preact";

interface FieldProps {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  /** What is wrong with the value, in words. */
  readonly fault?: string | undefined;
  readonly children: ComponentChildren;
}

/** A label, its control, a hint and what is wrong with it. */
export function Field({ id, label, hint, fault, children }: FieldProps) {
  return (
    <div class="field">
      <label class="field__label" for={id}>
        {label}
      </label>
      {children}
      {hint !== undefined && (
        <span class="field__hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {fault !== undefined && (
        <span class="field__fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}

/** Which words describe a control, for `aria-describedby`. */
export function describedBy(
  id: string,
  hint: string | undefined,
  fault: string | undefined,
): string | undefined {
  const ids = [hint === undefined ? "" : `${id}-hint`, fault === undefined ? "" : `${id}-fault`];
  return ids.filter(Boolean).join(" ") || undefined;
}
