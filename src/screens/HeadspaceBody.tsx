import type { HeadspaceView } from "../views/headspaceView.js";
import { Band } from "./parts/Band.js";
import { Notice } from "./parts/Notice.js";
import { Progress } from "./parts/Progress.js";
import { TraceChart } from "./parts/TraceChart.js";

/** The plate being sniffed: time left, evidence for each group, the channels. */
export function HeadspaceBody({ view }: { readonly view: HeadspaceView }) {
  return (
    <>
      <p>{view.text}</p>
      {view.steam !== null && <Notice strong>{view.steam}</Notice>}
      <Progress label={view.progressLabel} share={view.progress} text={view.left} />
      <div>
        <strong>{view.status}</strong>
        <p class="small numbers">{view.elapsed}</p>
        {view.likely !== null && <p class="small numbers">{view.likely}</p>}
      </div>
      {view.evidence.length > 0 && (
        <section class="card" aria-labelledby="evidence-title">
          <div class="row row--apart">
            <h2 id="evidence-title">{view.evidenceTitle}</h2>
            <span class="small quiet">{view.evidenceNote}</span>
          </div>
          <ul class="evidence">
            {view.evidence.map((one) => (
              <li key={one.group} class="stack stack--tight">
                <div class="evidence__head">
                  <strong>{one.name}</strong>
                  <span class="small">{one.lean}</span>
                </div>
                <Band view={one.band} small />
              </li>
            ))}
          </ul>
        </section>
      )}
      {view.trace !== null && <TraceChart view={view.trace} />}
      {view.lost !== null && <p class="small">{view.lost}</p>}
    </>
  );
}
