/** The mark: an n drawn by a plume that rises from the plate's rim. */
export function BrandMark() {
  return (
    <svg viewBox="0 0 28 28" aria-hidden="true" focusable="false">
      <path
        d="M3.500 25h21M8 21V12.500M8 17c0-6 11.500-7 11.500-.5V21M14 8.500c-2.600-2.400 2.600-3.800.4-6.500"
        fill="none"
        stroke="currentColor"
        stroke-width="2.5"
        stroke-linecap="round"
      />
    </svg>
  );
}
