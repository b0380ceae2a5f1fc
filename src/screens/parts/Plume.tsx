/** A plume over the rim, moving while the sniffer works; still where motion is not wanted. */
export function Plume() {
  return (
    <svg class="plume" viewBox="0 0 56 56" aria-hidden="true" focusable="false">
      <path d="M6 48h44" />
      <path class="plume__wisp" d="M20 42c-8-8 8-12 0-21s5-11 1-15" />
      <path class="plume__wisp" d="M35 42c-8-8 8-12 0-21s5-11 1-15" />
    </svg>
  );
}
