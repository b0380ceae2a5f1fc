import type { ComponentChildren } from "preact";

interface Props {
  readonly view: {
    readonly caption: string;
    readonly up: string;
    readonly across: string;
    readonly rows: readonly string[];
  };
  /** What is drawn on the field of 100 by 100, its origin at the upper left. */
  readonly children: ComponentChildren;
}

/** A square field with its two axes named; the rows below say the same as the drawing. */
export function SquareChart({ view, children }: Props) {
  return (
    <figure class="chart stack stack--tight">
      <figcaption class="small">{view.caption}</figcaption>
      <span class="small quiet" aria-hidden="true">
        {view.up}
      </span>
      <svg viewBox="-4 -4 108 108" aria-hidden="true" focusable="false">
        <path class="chart__frame" d="M0 0V100H100" />
        {children}
      </svg>
      <span class="small quiet chart__across" aria-hidden="true">
        {view.across}
      </span>
      <ul class="small numbers">
        {view.rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </figure>
  );
}
