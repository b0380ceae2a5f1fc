interface Props {
  readonly items: readonly { readonly label: string; readonly value: string }[];
}

/** Names and their values. */
export function Facts({ items }: Props) {
  return (
    <dl class="facts">
      {items.map((item) => (
        <div key={item.label}>
          <dt>{item.label}</dt>
          <dd>{item.value}</dd>
        </div>
      ))}
    </dl>
  );
}
