import { err, ok, type Result } from "../../kernel/result.js";

/** Longest side of a kept photo: enough to read a menu board, small enough to keep thousands. Our own choice. */
export const PHOTO_MAX_PX = 1600;
/** A larger file is not even tried: decoding it could end the page on a phone. Our own choice. */
const MAX_FILE_BYTES = 60_000_000;
const JPEG_QUALITY = 0.82;

/** Why a file gave no photo. */
export type PhotoFault =
  | "tooLarge" // more than the page can decode: take a smaller picture
  | "notAnImage"; // damaged, or a kind that this browser cannot read: choose another

export interface ScaledPhoto {
  readonly mime: "image/jpeg";
  readonly bytes: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * Draws a picture anew, upright and no longer than `maxPx`, as JPEG. Only what is drawn survives: the place, the time
 * and the camera that the file named do not, nor does an embedded preview.
 */
export async function scalePhoto(
  file: Blob,
  maxPx: number = PHOTO_MAX_PX,
): Promise<Result<ScaledPhoto, PhotoFault>> {
  if (file.size > MAX_FILE_BYTES) return err("tooLarge");
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    return err("notAnImage");
  }
  const { widthPx, heightPx } = fitWithin(picture.width, picture.height, maxPx);
  const drawn = await drawJpeg(picture, widthPx, heightPx);
  picture.close();
  if (drawn === null) return err("tooLarge");
  const bytes = new Uint8Array(await drawn.arrayBuffer());
  return ok({ mime: "image/jpeg", bytes, widthPx, heightPx });
}

/** The size with the longer side cut to `maxPx`; a smaller picture stays as it is. Never less than one pixel. */
export function fitWithin(
  width: number,
  height: number,
  maxPx: number,
): { readonly widthPx: number; readonly heightPx: number } {
  const shrink = Math.min(1, maxPx / Math.max(width, height));
  const side = (length: number) => Math.max(1, Math.round(length * shrink));
  return { widthPx: side(width), heightPx: side(height) };
}

function drawJpeg(picture: ImageBitmap, width: number, height: number): Promise<Blob | null> {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext("2d");
  if (pen === null) return Promise.resolve(null);
  // JPEG knows no transparency and would make it black.
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, 0, 0, width, height);
  return new Promise((settle) => canvas.toBlob(settle, "image/jpeg", JPEG_QUALITY));
}
