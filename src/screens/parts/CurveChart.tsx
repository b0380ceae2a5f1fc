import type { CurveView } from "../../views/noseReportView.js";

/** A line on a square field; the rows below say the same. */
export function CurveChart({ view }: { readonly view: Omit<CurveView, "title"> }) {
  return (
    <figure class="chart stack stack--tight">
      <figcaption class="small">{view.caption}</figcaption>
      <span class="small quiet" aria-hidden="true">
        {view.up}
      </span>
      <svg viewBox="-4 -4 108 108" aria-hidden="true" focusable="false">
        <path class="chart__frame" d="M0 0V100H100" />
        <polyline class="chart__line" points={view.points} />
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
