import { Icon } from "./Icon.js";

interface Props {
  readonly title: string;
  readonly text?: string | undefined;
  readonly back?: { readonly label: string; readonly onBack: () => void } | undefined;
}

/** A page's title, which takes the focus when the page opens, and the way back. */
export function PageHead({ title, text, back }: Props) {
  return (
    <header class="page-head">
      {back !== undefined && (
        <button type="button" class="back" onClick={back.onBack}>
          <Icon name="back" />
          {back.label}
        </button>
      )}
      <h1 tabIndex={-1}>{title}</h1>
      {text !== undefined && <p class="quiet">{text}</p>}
    </header>
  );
}
