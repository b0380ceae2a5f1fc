import { ActionBar } from "./ActionBar.js";
import { Button } from "./Button.js";

interface Props {
  readonly save: string;
  readonly cancel: string;
  readonly blocked?: boolean;
  readonly onSave: () => void;
  readonly onCancel: () => void;
}

/** Save and cancel, in reach of the thumb. */
export function FormActions({ save, cancel, blocked = false, onSave, onCancel }: Props) {
  return (
    <ActionBar last>
      <Button look="main" big wide blocked={blocked} onClick={onSave}>
        {save}
      </Button>
      <Button look="quiet" wide onClick={onCancel}>
        {cancel}
      </Button>
    </ActionBar>
  );
}
