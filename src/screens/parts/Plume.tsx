/**
 * A plume over the rim; still where motion is not wanted.
 *
 * @param rises - while the sniffer draws air; not while the phone computes, for moving it keeps taps waiting then
 */
export function Plume({ rises = false }: { readonly rises?: boolean }) {
  return (
    <span class="plume" aria-hidden="true">
      <Stroke path="M6 48h44" />
      <Stroke path="M20 42c-8-8 8-12 0-21s5-11 1-15" rises={rises} />
      <Stroke path="M35 42c-8-8 8-12 0-21s5-11 1-15" rises={rises} />
    </span>
  );
}

/** A drawing of its own: a part that moves within a drawing has all of it laid out anew with each picture of the page. */
function Stroke({ path, rises = false }: { readonly path: string; readonly rises?: boolean }) {
  return (
    <svg class={rises ? "plume__wisp" : undefined} viewBox="0 0 56 56" focusable="false">
      <path d={path} />
    </svg>
  );
}
