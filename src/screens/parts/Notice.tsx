import type { ComponentChildren } from "preact";

interface Props {
  readonly title?: string;
  readonly children?: ComponentChildren;
  readonly strong?: boolean;
  /** Said at once by a screen reader. */
  readonly live?: boolean;
}

/** Something to know; `strong` for what may not be overlooked. */
export function Notice({ title, children, strong, live }: Props) {
  return (
    <div class={strong ? "notice notice--strong" : "notice"} role={live ? "status" : undefined}>
      {title !== undefined && <strong>{title}</strong>}
      {children}
    </div>
  );
}
