/** The photos of a form that is open: scaled, shown at once, and held until the store has acknowledged them. */
import { ok, type Result } from "../../kernel/result.js";
import type { Photo } from "../../meals/photo.js";
import { nowIso, type Ports } from "../ports.js";
import { createPhotoUrls, keptPhoto, type PhotoUrls } from "./photoUrls.js";
import { scalePhoto, type PhotoFault } from "./scalePhoto.js";

export interface FormPhotos {
  /** Scales a file and holds it; gives its id. */
  add(file: Blob): Promise<Result<string, PhotoFault>>;
  remove(id: string): void;
  /** What the store does not have yet. */
  held(): readonly Photo[];
  /** The store has them now. */
  acknowledged(photos: readonly Photo[]): void;
  /** Ids of all that were added since the form was opened, removed ones too. */
  readonly added: ReadonlySet<string>;
  readonly urls: PhotoUrls;
}

export function createFormPhotos(ports: Ports): FormPhotos {
  const held = new Map<string, Photo>();
  const added = new Set<string>();
  const kept = keptPhoto(ports.store);
  return {
    add: async (file) => {
      const scaled = await scalePhoto(file);
      if (!scaled.ok) return scaled;
      const id = ports.newId();
      held.set(id, { id, ...scaled.value, addedAt: nowIso(ports) });
      added.add(id);
      return ok(id);
    },
    remove: (id) => void held.delete(id),
    held: () => [...held.values()],
    acknowledged: (photos) => photos.forEach(({ id }) => held.delete(id)),
    added,
    urls: createPhotoUrls(async (id) => {
      const photo = held.get(id);
      return photo === undefined ? kept(id) : new Blob([Uint8Array.from(photo.bytes)], { type: photo.mime });
    }),
  };
}
