import type { TraceView } from "../../views/traceView.js";

/** How each channel moved away from clean air. */
export function TraceChart({ view }: { readonly view: TraceView }) {
  return (
    <figure class="trace stack stack--tight">
      <figcaption class="small">
        <strong>{view.title}</strong>
      </figcaption>
      <div class="trace__axis quiet" aria-hidden="true">
        <span>{view.topLabel}</span>
      </div>
      <svg viewBox="0 0 320 120" role="img" aria-label={view.spoken}>
        <line x1="0" x2="320" y1={view.zeroY} y2={view.zeroY} />
        {view.lines.map((points, i) => (
          <polyline key={i} points={points} />
        ))}
      </svg>
      <div class="trace__axis quiet" aria-hidden="true">
        <span>{view.bottomLabel}</span>
      </div>
    </figure>
  );
}
