/** What bringing in a backup would do, worked out before anything is done. */
import type {
  BackupContents,
  BackupRecord,
  BackupTable,
  ExistingRecord,
  ImportChoice,
  ImportDifference,
  ImportPlan,
} from "./backupContents.js";
import { fingerprintOf } from "./fingerprint.js";

/** The choices that make sense when a record is here already and differs. */
const CHOICES: Readonly<Record<BackupTable, readonly ImportChoice[]>> = {
  settings: ["keepMine", "takeTheirs"],
  sniffers: ["keepMine", "takeTheirs"],
  checkJar: ["keepMine", "takeTheirs"],
  noses: ["keepBoth", "keepMine"],
  noseEvents: ["keepMine", "takeTheirs"],
  sniffs: ["keepBoth", "keepMine"], // raw sweeps are never written over
  sniffNotes: ["keepMine", "takeTheirs"],
  drafts: ["keepMine", "takeTheirs"],
  meals: ["keepMine", "takeTheirs", "keepBoth"],
  photos: ["keepMine", "takeTheirs"],
  setAside: ["keepMine", "takeTheirs"],
};

/**
 * Compares a backup with what is here. What is new comes in, what is the same stays, and for what differs the
 * newer one is proposed, or both where neither is newer. Settings stay as they are unless the user says
 * otherwise: they hold allergies. Nothing is written over without standing in `differing`.
 */
export function planImport(existing: readonly ExistingRecord[], incoming: BackupContents): ImportPlan {
  const here = new Map(existing.map((record) => [keyOf(record), record]));
  const fresh: BackupRecord[] = [];
  const same: { table: BackupTable; id: string }[] = [];
  const differing: ImportDifference[] = [];
  for (const theirs of incoming.records) {
    const mine = here.get(keyOf(theirs));
    if (mine === undefined) fresh.push(theirs);
    else if (mine.fingerprint === fingerprintOf(theirs) || isCopiedAlready(here, theirs))
      same.push({ table: theirs.table, id: theirs.id });
    else differing.push(difference(mine, theirs));
  }
  return { fresh, same, differing };
}

/** The same plan with another choice for one record. @throws {RangeError} if there is no such choice */
export function decide(plan: ImportPlan, table: BackupTable, id: string, choice: ImportChoice): ImportPlan {
  const differing = plan.differing.map((one) =>
    one.mine.table === table && one.mine.id === id ? { ...one, choice } : one,
  );
  const meant = differing.find((one) => one.mine.table === table && one.mine.id === id);
  if (meant === undefined) throw new RangeError(`no difference in ${table} under ${id}`);
  if (!meant.choices.includes(choice)) throw new RangeError(`${choice} is no choice in ${table}`);
  return { ...plan, differing };
}

/** The records that carrying out the plan would write. */
export function recordsToWrite(plan: ImportPlan): BackupRecord[] {
  const chosen = plan.differing.flatMap(({ choice, theirs }) => {
    if (choice === "keepMine") return [];
    return [choice === "keepBoth" ? copyBeside(theirs) : theirs];
  });
  return [...plan.fresh, ...chosen];
}

function difference(mine: ExistingRecord, theirs: BackupRecord): ImportDifference {
  return { mine, theirs, choice: proposal(mine, theirs), choices: CHOICES[theirs.table] };
}

function proposal(mine: ExistingRecord, theirs: BackupRecord): ImportChoice {
  const choices = CHOICES[theirs.table];
  const mineMs = mine.changedAt === null ? NaN : Date.parse(mine.changedAt);
  const theirsMs = theirs.changedAt === null ? NaN : Date.parse(theirs.changedAt);
  if (theirs.table === "settings" || mineMs > theirsMs) return "keepMine";
  if (theirsMs > mineMs && choices.includes("takeTheirs")) return "takeTheirs";
  return choices.includes("keepBoth") ? "keepBoth" : "keepMine";
}

/** The record under an id of its own; the same record always gets the same one, so a second import adds nothing. */
function copyBeside(record: BackupRecord): BackupRecord {
  const id = `${record.id}~${fingerprintOf(record)}`;
  return { ...record, id, value: { ...record.value, id } };
}

function isCopiedAlready(here: ReadonlyMap<string, ExistingRecord>, theirs: BackupRecord): boolean {
  return CHOICES[theirs.table].includes("keepBoth") && here.has(keyOf(copyBeside(theirs)));
}

function keyOf({ table, id }: { readonly table: BackupTable; readonly id: string }): string {
  return `${table}:${id}`;
}
