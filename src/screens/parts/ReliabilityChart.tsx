import type { ReliabilityChartView } from "../../views/reliabilityChart.js";

/** Called against came true. The rows below say the same. */
export function ReliabilityChart({ view }: { readonly view: ReliabilityChartView }) {
  return (
    <figure class="chart stack stack--tight">
      <figcaption class="small">{view.caption}</figcaption>
      <span class="small quiet" aria-hidden="true">
        {view.up}
      </span>
      <svg viewBox="-4 -4 108 108" aria-hidden="true" focusable="false">
        <path class="chart__frame" d="M0 0V100H100" />
        <path class="chart__ideal" d="M0 100L100 0" />
        {view.dots.map((dot, i) => (
          <circle key={i} class="chart__dot" cx={dot.x} cy={dot.y} r={dot.radius} />
        ))}
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
