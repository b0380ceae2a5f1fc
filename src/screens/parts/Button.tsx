import type { ComponentChildren } from "preact";

interface Props {
  readonly children: ComponentChildren;
  readonly onClick: () => void;
  readonly look?: "main" | "plain" | "quiet";
  readonly big?: boolean;
  readonly wide?: boolean;
  /** Stays reachable and says why it does nothing yet. */
  readonly blocked?: boolean;
  /** Id of the words that say why it is blocked, or what it will do. */
  readonly describedBy?: string;
  readonly label?: string;
}

/** A button of at least 48 px. */
export function Button({ children, onClick, look = "plain", big, wide, blocked, describedBy, label }: Props) {
  const classes = ["button", `button--${look}`, big ? "button--big" : "", wide ? "button--wide" : ""];
  return (
    <button
      type="button"
      class={classes.filter(Boolean).join(" ")}
      aria-disabled={blocked === true ? "true" : undefined}
      aria-describedby={describedBy}
      aria-label={label}
      onClick={blocked === true ? undefined : onClick}
    >
      {children}
    </button>
  );
}
