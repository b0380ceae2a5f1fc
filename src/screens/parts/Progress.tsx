interface Props {
  readonly label: string;
  /** 0 to 1. */
  readonly share: number;
  /** The same in words. */
  readonly text: string;
}

/** How much of something is over. */
export function Progress({ label, share, text }: Props) {
  return (
    <div
      class="progress"
      role="progressbar"
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(share * 100)}
      aria-valuetext={text}
    >
      <span class="progress__fill" style={{ "--share": share }} />
    </div>
  );
}
