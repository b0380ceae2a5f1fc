interface Props {
  readonly label: string;
  /** null where nothing was counted. */
  readonly percent: string | null;
  readonly text: string;
}

/** A share with its interval in words. */
export function RateLine({ label, percent, text }: Props) {
  return (
    <div class="rate">
      <span class="rate__label">{label}</span>
      <span class="rate__percent numbers">{percent ?? "–"}</span>
      <span class="small quiet numbers rate__text">{text}</span>
    </div>
  );
}
