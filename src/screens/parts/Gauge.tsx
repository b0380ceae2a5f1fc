import type { GaugeView } from "../../views/cleanAirView.js";

/** A value against its limit: the upright line is the limit. */
export function Gauge({ view }: { readonly view: GaugeView }) {
  return (
    <div class={`gauge gauge--${view.state}`}>
      {/* Beside the label: at the far end a longer word would begin elsewhere. */}
      <div class="row">
        <strong>{view.label}</strong>
        <span>{view.word}</span>
      </div>
      <div class="gauge__bar" aria-hidden="true">
        <span class="gauge__fill" style={{ "--share": view.filled }} />
        <span class="gauge__limit" style={{ "--limit": view.limitAt }} />
      </div>
      <span class="small quiet numbers">{view.value}</span>
    </div>
  );
}
