/** Addresses under which a page shows photos out of the store; all are taken back when the page closes. */
import { signal } from "@preact/signals";
import type { Store } from "../../store/store.js";
import { scalePhoto } from "./scalePhoto.js";

/** Photos that come one after the other are drawn together. */
const GATHER_MS = 60;
/** Side of a row's small picture, for screens of three pixels to the point. */
const THUMB_PX = 216;

export interface PhotoUrls {
  /** undefined while it is being read, or if it is not there. A component that asks is drawn again when it comes. */
  urlOf(id: string): string | undefined;
  /** Takes every address back; none is given out any more. */
  close(): void;
}

/**
 * @param read - a photo's picture; null if it cannot be had
 */
export function createPhotoUrls(read: (id: string) => Promise<Blob | null>): PhotoUrls {
  const shown = signal<ReadonlyMap<string, string>>(new Map());
  const made = new Map<string, string>();
  const asked = new Set<string>();
  const waiting: string[] = [];
  let busy = false;
  let closed = false;
  let gathering: ReturnType<typeof setTimeout> | undefined;

  function show(): void {
    gathering = undefined;
    shown.value = new Map(made);
  }

  /** One at a time: a list of a hundred photos must not hold a hundred of them decoded. */
  async function work(): Promise<void> {
    if (busy) return;
    busy = true;
    for (let id = waiting.shift(); id !== undefined && !closed; id = waiting.shift()) {
      const picture = await read(id);
      if (picture === null || closed) continue;
      made.set(id, URL.createObjectURL(picture));
      gathering ??= setTimeout(show, GATHER_MS);
    }
    busy = false;
  }

  return {
    urlOf: (id) => {
      if (!asked.has(id) && !closed) {
        asked.add(id);
        waiting.push(id);
        void work();
      }
      return shown.value.get(id);
    },
    close: () => {
      closed = true;
      clearTimeout(gathering);
      made.forEach((url) => URL.revokeObjectURL(url));
      made.clear();
    },
  };
}

/** A photo as it is kept. */
export const keptPhoto =
  (store: Pick<Store, "getPhoto">) =>
  async (id: string): Promise<Blob | null> => {
    const photo = await store.getPhoto(id);
    return photo.ok ? new Blob([Uint8Array.from(photo.value.bytes)], { type: photo.value.mime }) : null;
  };

/** A photo as a row shows it: small, so that a long list stays light. */
export const smallPhoto =
  (store: Pick<Store, "getPhoto">) =>
  async (id: string): Promise<Blob | null> => {
    const photo = await keptPhoto(store)(id);
    if (photo === null) return null;
    const small = await scalePhoto(photo, THUMB_PX);
    return small.ok ? new Blob([Uint8Array.from(small.value.bytes)], { type: small.value.mime }) : photo;
  };
