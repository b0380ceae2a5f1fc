import type { BandView } from "../../views/bandView.js";

/** The scale from "not there" to "there" with the probability's interval drawn on it. */
export function Band({ view, small = false }: { readonly view: BandView; readonly small?: boolean }) {
  const { interval, point } = view;
  return (
    <figure class={`band band--${view.tone}${small ? " band--small" : ""}`}>
      <div class="band__scale" role="img" aria-label={view.spoken}>
        <span class="band__middle" style={{ "--from": view.uncertainFrom, "--to": view.uncertainTo }} />
        {interval !== null && (
          <span class="band__interval" style={{ "--from": interval.from, "--to": interval.to }} />
        )}
        {point !== null && <span class="band__point" style={{ "--at": point }} />}
      </div>
      {!small && (
        <figcaption class="band__ends" aria-hidden="true">
          <span>{view.low}</span>
          <span>{view.middle}</span>
          <span>{view.high}</span>
        </figcaption>
      )}
    </figure>
  );
}
