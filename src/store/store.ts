/**
 * The port between the app and what is kept on the phone. `memoryStore.ts` and `dexieStore.ts` fill it, and one
 * acceptance suite holds both to the same behaviour.
 *
 * A call whose promise has come back ok is acknowledged: what it wrote survives a crash of the browser. Each call
 * is one transaction: all of it is kept, or nothing. Every record is checked on the way out; one that fails is
 * set aside and reported, and never takes a list down with it. A record of the wrong shape on the way in is our
 * own mistake and throws RangeError.
 */
import type { Breathe } from "../kernel/breathe.js";
import type { BackupContents, ExistingRecord, ImportPlan } from "../meals/backupContents.js";
import type { Meal } from "../meals/meal.js";
import type { Photo } from "../meals/photo.js";
import type { Sniff } from "../sniff/sniff.js";
import type { NoseStore } from "./noseStore.js";
import type { Settings } from "./settings.js";
import type { SetAsideRecord, Stored } from "./storeError.js";
import type {
  CheckJarReading,
  Draft,
  MealQuery,
  Page,
  PhotoNote,
  SampleLabel,
  Samples,
  SnifferRecord,
  SniffNote,
  SniffQuery,
  StoreTable,
} from "./storeTypes.js";

/** Records to write in one transaction. A record with a known id replaces the old one, but for sniffs. */
export interface Changes {
  readonly meals?: readonly Meal[];
  readonly photos?: readonly Photo[];
  /** Raw sweeps are kept for ever: a sniff whose id is known stays as it is. */
  readonly sniffs?: readonly Sniff[];
  readonly sniffers?: readonly SnifferRecord[];
  readonly checkJar?: readonly CheckJarReading[];
  readonly drafts?: readonly Draft[];
  /** Ids of drafts that are no longer needed. */
  readonly doneDrafts?: readonly string[];
  /** Sniffs to keep as samples, by sniff id, in this same transaction. */
  readonly labels?: Readonly<Record<string, SampleLabel>>;
  /** Made from demo data: `removeDemo` takes these away again. Default false. */
  readonly demo?: boolean;
}

/** Meals, newest first. */
export interface MealStore {
  getMeal(id: string): Stored<Meal>;
  /** Pages through an index; deleted meals are left out. */
  listMeals(query?: MealQuery): Stored<Page<Meal>>;
  countMeals(which?: { readonly withoutDemo?: boolean }): Stored<number>;
  /** Can be undone until `purgeDeletedMeals`. */
  deleteMeal(id: string, deletedAt: string): Stored<void>;
  restoreMeal(id: string, changedAt: string): Stored<void>;
  /** Removes, for real, the meals deleted before an instant, and the photos that no other meal holds. */
  purgeDeletedMeals(deletedBefore: string): Stored<number>;
}

/** Photos, each with its bytes. */
export interface PhotoStore {
  getPhoto(id: string): Stored<Photo>;
  /** Without their bytes, newest first. */
  listPhotos(): Stored<Page<PhotoNote>>;
  /** Removes the bytes and takes the ids out of their meals. */
  deletePhotos(ids: readonly string[], changedAt: string): Stored<void>;
}

/** Sniffs: raw sweeps that never change, and what is said of them. */
export interface SniffStore {
  /** The sweeps as they were recorded. */
  getSniff(id: string): Stored<Sniff>;
  listSniffs(query?: SniffQuery): Stored<Page<SniffNote>>;
  /** null: no longer a sample; the sweeps stay. */
  labelSniff(id: string, label: SampleLabel | null, changedAt: string): Stored<void>;
  /** All samples with their sweeps, oldest first. */
  readSamples(): Stored<Samples>;
}

/** The rest of what is known. */
export interface OtherStore {
  getSettings(): Stored<Settings>;
  /** Reads, merges and writes in one transaction; gives back what holds now. */
  changeSettings(patch: Readonly<Record<string, unknown>>, changedAt: string): Stored<Settings>;
  listSniffers(): Stored<Page<SnifferRecord>>;
  forgetSniffer(id: string): Stored<void>;
  /** Oldest first. */
  listCheckJar(snifferId: string): Stored<Page<CheckJarReading>>;
  listDrafts(): Stored<Page<Draft>>;
}

/** The data as a whole. */
export interface WholeStore {
  /** The browser lost the database that was here before: say so, and offer to bring in the last backup. */
  readonly wasLost: boolean;
  save(changes: Changes): Stored<void>;
  hasDemo(): Stored<boolean>;
  /** Takes away every record made from demo data; gives how many. */
  removeDemo(): Stored<number>;
  listSetAside(): Stored<readonly SetAsideRecord[]>;
  /** Everything but deleted meals. */
  exportContents(
    writtenAt: string,
    options?: { readonly withoutPhotos?: boolean; readonly breathe?: Breathe },
  ): Stored<BackupContents>;
  /** What is here, for `planImport`. */
  existingRecords(breathe?: Breathe): Stored<readonly ExistingRecord[]>;
  /** Carries a plan out: all of it or nothing. */
  applyImport(plan: ImportPlan): Stored<void>;
  /** Deletes everything, for real. The store stays usable and empty. */
  deleteEverything(): Stored<void>;
  /** Called after each acknowledged write to one of the tables, from this tab or another. Gives an unsubscriber. */
  subscribe(tables: readonly StoreTable[], listener: (tables: readonly StoreTable[]) => void): () => void;
  /** Called once if the connection ends without `close`: a newer tab wants the database, or it was deleted. */
  onClosed(listener: () => void): void;
  close(): void;
}

/** What is kept on the phone. */
export interface Store extends MealStore, PhotoStore, SniffStore, NoseStore, OtherStore, WholeStore {}
