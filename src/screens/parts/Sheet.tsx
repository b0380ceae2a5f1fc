import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

interface Props {
  readonly title: string;
  readonly children: ComponentChildren;
  readonly onClose: () => void;
}

/** A dialog that rises from the bottom edge. Escape closes it; the browser keeps the focus inside. */
export function Sheet({ title, children, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element !== null && !element.open) element.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-labelledby="sheet-title"
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div class="stack">
        <h2 id="sheet-title" tabIndex={-1}>
          {title}
        </h2>
        {children}
      </div>
    </dialog>
  );
}
