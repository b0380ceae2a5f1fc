/** Pictures and store reads for the browser test of Meals. */
import type { Page } from "playwright-core";
import type { Meal } from "../../src/meals/meal.js";

/** A JPEG of the page's own making, as wide and high as wanted: stripes, so that a turn of it shows. */
export async function jpegOf(page: Page, width: number, height: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([wide, high]) => {
      const canvas = document.createElement("canvas");
      canvas.width = wide;
      canvas.height = high;
      const pen = canvas.getContext("2d");
      if (pen === null) throw new Error("no canvas");
      pen.fillStyle = "red";
      pen.fillRect(0, 0, wide, high);
      pen.fillStyle = "blue";
      pen.fillRect(0, 0, wide / 2, high); // the left half
      const url = canvas.toDataURL("image/jpeg", 0.9);
      return url.slice(url.indexOf(",") + 1);
    },
    [width, height] as const,
  );
  return Buffer.from(base64, "base64");
}

/** Degrees of the place that `withExif` writes into a picture: 52 and 13, as rationals. */
const LATITUDE = [52, 1, 31, 1, 12, 1];

/**
 * Puts an Exif segment behind the start of a JPEG: turned by a quarter (orientation 6), with a GPS latitude and the
 * camera's name.
 *
 * @see CIPA DC-008 (Exif 2.32), 4.5.4 and 4.6; TIFF 6.0, section 2 (tags and layout: value from memory)
 */
export function withExif(jpeg: Buffer, camera: string): Buffer {
  const name = Buffer.from(`${camera}\0`, "latin1");
  const nameAt = 8 + 2 + 3 * 12 + 4;
  const gpsAt = nameAt + name.length;
  const latitudeAt = gpsAt + 2 + 2 * 12 + 4;
  const tiff = Buffer.alloc(latitudeAt + 24);
  tiff.write("II*\0", 0, "latin1");
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(3, 8);
  const entry = (at: number, tag: number, type: number, count: number, value: number) => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  entry(10, 0x0110, 2, name.length, nameAt); // Model, ASCII
  entry(22, 0x0112, 3, 1, 6); // Orientation, SHORT: the row 0 is the right side
  entry(34, 0x8825, 4, 1, gpsAt); // GPS directory, LONG
  name.copy(tiff, nameAt);
  tiff.writeUInt16LE(2, gpsAt);
  entry(gpsAt + 2, 1, 2, 2, 0x4e); // GPSLatitudeRef "N"
  entry(gpsAt + 14, 2, 5, 3, latitudeAt); // GPSLatitude, three RATIONALs
  LATITUDE.forEach((value, i) => tiff.writeUInt32LE(value, latitudeAt + 4 * i));
  const body = Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
}

/** Names of the application segments (APP1 to APP15) of a JPEG, such as "Exif". @see ITU-T T.81, annex B */
export function tagsOf(jpeg: Buffer): string[] {
  const names: string[] = [];
  for (let at = 2; at + 4 <= jpeg.length && jpeg[at] === 0xff; at += 2 + jpeg.readUInt16BE(at + 2)) {
    const kind = jpeg[at + 1] ?? 0;
    if (kind === 0xda) break; // the picture itself
    if (kind < 0xe1 || kind > 0xef) continue;
    names.push(jpeg.subarray(at + 4, jpeg.indexOf(0, at + 4)).toString("latin1"));
  }
  return names;
}

/** A square JPEG that no coder can make small. */
export async function noiseOf(page: Page, side: number): Promise<Buffer> {
  const base64 = await page.evaluate((wide) => {
    const canvas = document.createElement("canvas");
    canvas.width = wide;
    canvas.height = wide;
    const pen = canvas.getContext("2d");
    if (pen === null) throw new Error("no canvas");
    const picture = pen.createImageData(wide, wide);
    for (let i = 0; i < picture.data.length; i += 1)
      picture.data[i] = i % 4 === 3 ? 255 : Math.random() * 256;
    pen.putImageData(picture, 0, 0);
    const url = canvas.toDataURL("image/jpeg", 0.9);
    return url.slice(url.indexOf(",") + 1);
  }, side);
  return Buffer.from(base64, "base64");
}

interface Row<T> {
  readonly id: string;
  readonly demo: 0 | 1;
  readonly value: T;
}

/** Puts meals straight into the browser's database, once the app has made it. */
export async function putMeals(page: Page, meals: readonly Meal[]): Promise<void> {
  // The first screen stands before it is made, and opening it too early would make an empty one.
  await page.evaluate(async () => {
    while (!(await indexedDB.databases()).some(({ name }) => name === "nidor"))
      await new Promise((later) => setTimeout(later, 50));
  });
  await page.evaluate(
    (all) =>
      new Promise<void>((settle, fail) => {
        const request = indexedDB.open("nidor");
        request.onerror = () => fail(request.error);
        request.onsuccess = () => {
          const change = request.result.transaction("meals", "readwrite");
          const table = change.objectStore("meals");
          for (const { id, atMs, value } of all) table.put({ id, bucket: "live", atMs, demo: 0, value });
          change.onerror = () => fail(change.error);
          change.oncomplete = () => {
            request.result.close();
            settle();
          };
        };
      }),
    meals.map((value) => ({ id: value.id, atMs: Date.parse(value.at), value })),
  );
}

/** From the tap on the place to the frame that shows the first row. */
export function firstScreenMs(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((settle) => {
        const start = performance.now();
        const watcher = new MutationObserver(() => {
          if (document.querySelector(".meal-row") === null) return;
          watcher.disconnect();
          requestAnimationFrame(() => settle(performance.now() - start));
        });
        watcher.observe(document.body, { childList: true, subtree: true });
        document.querySelector<HTMLElement>('a[href="#/meals"]')?.click();
      }),
  );
}

/** From each key press in the search to the frame that answers it. */
export function keyPressesMs(page: Page, typed: readonly string[]): Promise<number[]> {
  return page.evaluate(async (texts) => {
    const field = document.querySelector<HTMLInputElement>("#meal-search");
    const times: number[] = [];
    for (const text of texts) {
      const start = performance.now();
      if (field !== null) field.value = text;
      field?.dispatchEvent(new InputEvent("input", { bubbles: true }));
      await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn, 0)));
      times.push(performance.now() - start);
    }
    return times;
  }, typed);
}

/** What one table holds, straight out of the browser's database. */
export async function rowsOf<T>(page: Page, table: string): Promise<T[]> {
  return (await tableOf<T>(page, table)).map(({ value }) => value);
}

/** Ids of the rows that are marked as a demo. */
export async function demoIds(page: Page, table: string): Promise<string[]> {
  return (await tableOf(page, table)).filter(({ demo }) => demo === 1).map(({ id }) => id);
}

async function tableOf<T>(page: Page, table: string): Promise<Row<T>[]> {
  return page.evaluate(
    (name) =>
      new Promise<Row<T>[]>((settle, fail) => {
        const request = indexedDB.open("nidor");
        request.onerror = () => fail(request.error);
        request.onsuccess = () => {
          const all = request.result.transaction(name).objectStore(name).getAll();
          all.onsuccess = () => {
            settle(all.result as Row<T>[]);
            request.result.close();
          };
        };
      }),
    table,
  );
}

/** The bytes of every kept photo. */
export async function photoBytes(page: Page): Promise<Buffer[]> {
  const all = await page.evaluate(
    () =>
      new Promise<string[]>((settle, fail) => {
        const request = indexedDB.open("nidor");
        request.onerror = () => fail(request.error);
        request.onsuccess = () => {
          const rows = request.result.transaction("photoBytes").objectStore("photoBytes").getAll();
          rows.onsuccess = () => {
            const texts = (rows.result as { value: { bytes: Uint8Array } }[]).map(({ value }) =>
              Array.from(value.bytes, (byte) => String.fromCharCode(byte)).join(""),
            );
            settle(texts.map(btoa));
            request.result.close();
          };
        };
      }),
  );
  return all.map((text) => Buffer.from(text, "base64"));
}
