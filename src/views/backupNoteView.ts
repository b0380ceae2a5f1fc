import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";

/** The reminder of a backup. */
export interface BackupNoteView {
  readonly text: string;
  readonly open: string;
  readonly later: string;
}

/** @param records - meals and samples that no backup holds */
export function backupNoteView(records: number, { text, formats }: Words<"data">): BackupNoteView {
  const { reminder } = text.data;
  return { text: reminder.text(numberText(records, formats)), open: reminder.open, later: reminder.later };
}
