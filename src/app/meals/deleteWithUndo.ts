import type { AppModel } from "../appModel.js";
import { nowIso } from "../ports.js";
import { mealsListOf } from "./mealsListOf.js";

/** Deletes a meal, leads back to the list, and offers to bring it back. */
export async function deleteWithUndo(app: AppModel, id: string): Promise<void> {
  const { store } = app.ports;
  const deleted = await store.deleteMeal(id, nowIso(app.ports));
  if (!deleted.ok) return app.tellStoreError(deleted.error);
  mealsListOf(app).drop(id);
  app.router.replace("meals");
  app.toasts.show(app.preferences.words.value.text.meals.deleted, () => {
    void store.restoreMeal(id, nowIso(app.ports)).then((restored) => {
      if (!restored.ok) app.tellStoreError(restored.error);
    });
  });
}
