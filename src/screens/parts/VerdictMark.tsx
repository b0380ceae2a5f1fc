import type { Tone } from "../../views/tone.js";

/** Smelled: a solid plume. Not smelled: an open ring. Uncertain: a hatched field with a dashed edge. */
export function VerdictMark({ tone, small = false }: { readonly tone: Tone; readonly small?: boolean }) {
  return (
    <svg
      class={small ? "verdict-mark verdict-mark--small" : "verdict-mark"}
      viewBox="0 0 56 56"
      aria-hidden="true"
      focusable="false"
    >
      {tone === "smelled" && (
        <path
          fill="currentColor"
          d="M28 3C36 16 48 24 48 36C48 45.500 39 53 28 53C17 53 8 45.500 8 36C8 24 20 16 28 3Z"
        />
      )}
      {tone === "notSmelled" && (
        <circle cx="28" cy="28" r="21" fill="none" stroke="currentColor" stroke-width="5" />
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
