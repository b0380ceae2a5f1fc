import type { BackupNoteView } from "../../views/backupNoteView.js";
import { Button } from "./Button.js";
import { Notice } from "./Notice.js";

interface Props {
  readonly view: BackupNoteView;
  readonly onOpen: () => void;
  readonly onLater: () => void;
}

/** Reminds of a backup, and can be sent away. */
export function BackupNote({ view, onOpen, onLater }: Props) {
  return (
    <Notice>
      <p>{view.text}</p>
      <div class="row">
        <Button onClick={onOpen}>{view.open}</Button>
        <Button look="quiet" onClick={onLater}>
          {view.later}
        </Button>
      </div>
    </Notice>
  );
}
