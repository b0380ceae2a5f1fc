interface Props {
  readonly caption: string;
  readonly captionHidden?: boolean;
  /** The first is the heading of the row labels. */
  readonly columns: readonly string[];
  readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
}

/** A small table of numbers. */
export function Table({ caption, captionHidden, columns, rows }: Props) {
  return (
    <div class="table" role="region" aria-label={caption} tabIndex={0}>
      <table>
        <caption class={captionHidden ? "unseen" : "small quiet"}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.label}>
              <th scope="row">{row.label}</th>
              {row.cells.map((cell, i) => (
                <td key={i}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
