import type { Tone } from "../../views/tone.js";

/** A whole in its parts, each drawn as its finding is; the line below it says the numbers. */
export function SplitBar({
  parts,
}: {
  readonly parts: readonly { readonly tone: Tone; readonly share: number }[];
}) {
  return (
    <div class="split" aria-hidden="true">
      {parts.map(({ tone, share }) => (
        <span key={tone} class={`split__part split__part--${tone}`} style={{ "--share": share }} />
      ))}
    </div>
  );
}
