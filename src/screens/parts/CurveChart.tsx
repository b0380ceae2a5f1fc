import type { CurveView } from "../../views/curveView.js";
import { SquareChart } from "./SquareChart.js";

/** A line on a square field; the rows below say the same. */
export function CurveChart({ view }: { readonly view: Omit<CurveView, "title"> }) {
  return (
    <SquareChart view={view}>
      <polyline class="chart__line" points={view.points} />
    </SquareChart>
  );
}
