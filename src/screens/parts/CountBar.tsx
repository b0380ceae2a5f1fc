interface Props {
  readonly label: string;
  readonly value: string;
  /** 0 to 1. */
  readonly share: number;
  /** Hollow, for what is without. */
  readonly open?: boolean;
}

/** A share as a bar between its name and its number. */
export function CountBar({ label, value, share, open = false }: Props) {
  return (
    <div class={open ? "count__line count__line--open" : "count__line"}>
      <span class="small">{label}</span>
      <span class="count__bar" aria-hidden="true">
        {share > 0 && <span style={{ "--share": share }} />}
      </span>
      <strong class="numbers">{value}</strong>
    </div>
  );
}
