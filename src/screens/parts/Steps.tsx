import type { StepsView } from "../../views/stepsView.js";

/** The row of steps; the present one is marked by weight and for screen readers. */
export function Steps({ view }: { readonly view: StepsView }) {
  return (
    <ol class="steps" aria-label={view.label}>
      {view.items.map((item) => (
        <li
          key={item.label}
          data-state={item.state}
          data-label={item.label}
          aria-current={item.state === "now" ? "step" : undefined}
        >
          {item.label}
        </li>
      ))}
    </ol>
  );
}
