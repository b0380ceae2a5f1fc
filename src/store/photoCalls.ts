import { err, ok } from "../kernel/result.js";
import type { Photo } from "../meals/photo.js";
import { parseMeal } from "../meals/parseMeal.js";
import type { Engine, EngineTransaction } from "./engine.js";
import { photoIdsOf } from "./mealCalls.js";
import { parsePhotoBytes, parsePhotoNote } from "./records.js";
import { ALL, mealRow } from "./rows.js";
import { getOne, readBucket } from "./setAside.js";
import type { PhotoStore } from "./store.js";
import { StoreRefusal, type Stored } from "./storeError.js";

/** The calls on photos. */
export function photoCalls(engine: Engine): PhotoStore {
  return {
    getPhoto: (id) => engine.read(["photos", "photoBytes", "setAside"], (tx) => photoOf(tx, id)),
    async listPhotos() {
      const outcome = await readBucket(engine, "photos", ALL, parsePhotoNote, false);
      if (!outcome.ok) return outcome;
      return ok({ items: outcome.value.value, next: null, setAside: outcome.value.setAside });
    },
    deletePhotos: (ids, changedAt) => deletePhotos(engine, ids, changedAt),
  };
}

/** A photo with its bytes; refuses if the two do not belong together. */
export async function photoOf(tx: EngineTransaction, id: string): Promise<Photo> {
  const { sizeBytes, ...note } = await getOne(tx, "photos", id, parsePhotoNote);
  const { bytes } = await getOne(tx, "photoBytes", id, parsePhotoBytes);
  if (bytes.length === sizeBytes) return { ...note, bytes };
  throw new StoreRefusal({
    kind: "corrupt",
    table: "photoBytes",
    id,
    cause: `bytes: has ${bytes.length} of ${sizeBytes} bytes`,
  });
}

async function deletePhotos(engine: Engine, ids: readonly string[], changedAt: string): Stored<void> {
  const gone = new Set(ids);
  const outcome = await engine.write(["photos", "photoBytes", "meals"], ["photos", "meals"], async (tx) => {
    for (const row of await tx.all("meals")) {
      if (!photoIdsOf(row).some((id) => gone.has(id))) continue;
      const meal = parseMeal(row.value);
      if (!meal.ok) continue;
      const photoIds = meal.value.photoIds.filter((id) => !gone.has(id));
      await tx.put("meals", [mealRow({ ...meal.value, photoIds, changedAt }, row)]);
    }
    await tx.remove("photos", ids);
    await tx.remove("photoBytes", ids);
  });
  return outcome.ok ? ok(undefined) : err(outcome.error);
}
