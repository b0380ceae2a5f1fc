import type { CleanAirView } from "../views/cleanAirView.js";
import { Gauge } from "./parts/Gauge.js";
import { Guide } from "./parts/Guide.js";
import { Plume } from "./parts/Plume.js";

/** Waiting for steady air: both limits, and what helps where it does not settle. */
export function CleanAirBody({ view }: { readonly view: CleanAirView }) {
  return (
    <>
      <p>{view.text}</p>
      <div class="stage">
        <Plume />
        <div>
          <div role="status">
            <p class="check__status">{view.status}</p>
            {view.remedy !== null && <p>{view.remedy}</p>}
          </div>
          {view.atLeast !== null && <p class="numbers">{view.atLeast}</p>}
        </div>
      </div>
      <Guide view={view.guide} />
      {view.gauges.map((gauge) => (
        <Gauge key={gauge.label} view={gauge} />
      ))}
      {view.waited !== null && <p class="small quiet numbers">{view.waited}</p>}
    </>
  );
}
