/** What the data page says of what is kept here. */
import { ok, type Result } from "../../kernel/result.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import type { DataState } from "../../views/dataView.js";
import { sniffNotes } from "../sniffNotes.js";
import { lastBackupAt } from "./lastBackup.js";

export type DataFacts = Omit<DataState, "fault" | "saving" | "erase" | "nowMs">;

/** Counts what is kept and asks the browser about its room. */
export async function readDataFacts(store: Store): Promise<Result<DataFacts, StoreError>> {
  const meals = await store.countMeals();
  if (!meals.ok) return meals;
  const photos = await store.listPhotos();
  if (!photos.ok) return photos;
  const sniffs = await sniffNotes(store);
  if (!sniffs.ok) return sniffs;
  const noses = await store.listNoses();
  if (!noses.ok) return noses;
  const setAside = await store.listSetAside();
  if (!setAside.ok) return setAside;
  const hasDemo = await store.hasDemo();
  if (!hasDemo.ok) return hasDemo;
  return ok({
    meals: meals.value,
    photos: photos.value.items.length,
    sniffs: sniffs.value.length,
    noses: noses.value.noses.length,
    setAside: setAside.value.length,
    hasDemo: hasDemo.value,
    lastBackupAt: lastBackupAt(),
    ...(await browserRoom()),
  });
}

/** Over plain http the browser tells nothing of its storage. */
async function browserRoom(): Promise<Pick<DataFacts, "sizeBytes" | "persisted">> {
  const storage = storageManager();
  if (storage === undefined) return { sizeBytes: null, persisted: false };
  try {
    const { usage } = await storage.estimate();
    return { sizeBytes: usage ?? null, persisted: await storage.persisted() };
  } catch {
    return { sizeBytes: null, persisted: false };
  }
}

/** Asks the browser to keep the data; it may say no, and then nothing changes. */
export async function askToPersist(): Promise<void> {
  try {
    await storageManager()?.persist();
  } catch {
    // As a refusal.
  }
}

function storageManager(): StorageManager | undefined {
  return typeof navigator === "object" && "storage" in navigator ? navigator.storage : undefined;
}
