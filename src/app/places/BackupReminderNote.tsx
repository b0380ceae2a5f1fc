import { useMemo } from "preact/hooks";
import { BackupNote } from "../../screens/parts/BackupNote.js";
import { backupNoteView } from "../../views/backupNoteView.js";
import type { AppModel } from "../appModel.js";

/** The reminder of a backup. It comes with a page or not at all: one that came later would push the page down. */
export function BackupReminderNote({ app }: { readonly app: AppModel }) {
  const { due, rest } = app.reminder;
  const dueAtFirst = useMemo(() => due.peek() !== null, []);
  if (!dueAtFirst || due.value === null) return null;
  return (
    <BackupNote
      view={backupNoteView(due.value, app.preferences.words.value)}
      onOpen={() => app.router.go("you", "data")}
      onLater={() => void rest()}
    />
  );
}
