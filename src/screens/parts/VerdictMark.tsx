import type { Tone } from "../../views/tone.js";

/** Smelled: a solid plate with a plume. Not smelled: an open ring, no plume. Uncertain: a hatched field with a dashed edge. */
export function VerdictMark({ tone, small = false }: { readonly tone: Tone; readonly small?: boolean }) {
  return (
    <svg
      class={small ? "verdict-mark verdict-mark--small" : "verdict-mark"}
      viewBox="0 0 56 56"
      aria-hidden="true"
      focusable="false"
    >
      {tone === "smelled" && (
        <g>
          <circle cx="28" cy="37" r="17.500" fill="currentColor" />
          <path
            d="M20 15c-4.500-4 4.500-6 0-12M28 13c-4.500-4 4.500-6 0-12M36 15c-4.500-4 4.500-6 0-12"
            fill="none"
            stroke="currentColor"
            stroke-width="3.500"
            stroke-linecap="round"
          />
        </g>
      )}
      {tone === "notSmelled" && (
        <circle cx="28" cy="37" r="15.500" fill="none" stroke="currentColor" stroke-width="4.500" />
      )}
      {tone === "uncertain" && (
        <g fill="none" stroke="currentColor" stroke-width="3">
          <rect x="7" y="7" width="42" height="42" stroke-dasharray="8 5" />
          <path d="M10 20L20 10M10 32L32 10M10 44L44 10M22 46L46 22M34 46L46 34" />
        </g>
      )}
    </svg>
  );
}
