import type { ReliabilityChartView } from "../../views/reliabilityChart.js";
import { SquareChart } from "./SquareChart.js";

/** Called against came true. The rows below say the same. */
export function ReliabilityChart({ view }: { readonly view: ReliabilityChartView }) {
  return (
    <SquareChart view={view}>
      <path class="chart__ideal" d="M0 100L100 0" />
      {view.dots.map((dot, i) => (
        <circle key={i} class="chart__dot" cx={dot.x} cy={dot.y} r={dot.radius} />
      ))}
    </SquareChart>
  );
}
