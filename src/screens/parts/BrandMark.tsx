/** The mark: an n drawn by a plume that rises from the plate's rim. */
export function BrandMark() {
  return (
    <svg viewBox="0 0 28 28" aria-hidden="true" focusable="false">
      <path
        d="M4 24.500h20M8.500 20V12.500c0-6.500 11-6.500 11 0V20M8.500 12.500c-3-3 2.500-5 0-9.500"
        fill="none"
        stroke="currentColor"
        stroke-width="2.6"
        stroke-linecap="round"
      />
    </svg>
  );
}
