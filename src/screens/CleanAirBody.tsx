import type { AirWords, CleanAirView } from "../views/cleanAirView.js";
import { Gauge } from "./parts/Gauge.js";
import { Guide } from "./parts/Guide.js";
import { Plume } from "./parts/Plume.js";

/** Waiting for steady air: both limits, and what helps where it does not settle. */
export function CleanAirBody({ view }: { readonly view: CleanAirView }) {
  return (
    <>
      <p>{view.text}</p>
      <div class="stage">
        <Plume rises />
        <div>
          <div class="room">
            <div role="status">
              <Air {...view.said} />
            </div>
            {view.sayings.map((one) => (
              <div key={one.status} class="room__unseen">
                <Air {...one} />
              </div>
            ))}
          </div>
          <p class="numbers">{view.time}</p>
        </div>
      </div>
      <Guide view={view.guide} />
      {view.gauges.map((gauge) => (
        <Gauge key={gauge.label} view={gauge} />
      ))}
    </>
  );
}

function Air({ status, remedy }: AirWords) {
  return (
    <>
      <p class="check__status">{status}</p>
      <p>{remedy}</p>
    </>
  );
}
