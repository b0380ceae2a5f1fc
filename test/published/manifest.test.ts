// What a phone reads to put the app on its home screen, held to the W3C's Web Application Manifest (its members, "Icon
// masks and safe zone", and the steps that process id, start_url, scope and shortcuts), and to Web App Manifest -
// Application Information for screenshots and categories.
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { readPng } from "./readPng.js";

const PUBLIC = new URL("../../public/", import.meta.url);
const words = v.pipe(v.string(), v.minLength(1));
const image = {
  src: words,
  type: v.picklist(["image/png", "image/svg+xml"]),
  sizes: v.pipe(v.string(), v.regex(/^(any|[1-9]\d*x[1-9]\d*)$/)),
};
const icon = v.strictObject({
  ...image,
  purpose: v.optional(v.picklist(["any", "maskable", "monochrome"]), "any"),
});
/** The members that the two documents name, and no others: a misspelt one would be passed over in silence. */
const manifestShape = v.strictObject({
  id: words,
  name: words,
  short_name: words,
  description: words,
  lang: words,
  dir: v.picklist(["ltr", "rtl", "auto"]),
  start_url: words,
  scope: words,
  display: v.picklist(["fullscreen", "standalone", "minimal-ui", "browser"]),
  orientation: v.picklist(["any", "natural", "portrait", "landscape"]),
  background_color: words,
  theme_color: words,
  categories: v.array(words),
  icons: v.array(icon),
  shortcuts: v.array(v.strictObject({ name: words, url: words, icons: v.array(icon) })),
  screenshots: v.array(
    v.strictObject({ ...image, form_factor: v.picklist(["narrow", "wide"]), label: words }),
  ),
});
const manifest = v.parse(
  manifestShape,
  JSON.parse(readFileSync(new URL("manifest.webmanifest", PUBLIC), "utf8")),
);
const fileOf = (src: string) => readFileSync(new URL(src, PUBLIC));
const pixelsOf = (src: string) => {
  const { width, height } = readPng(fileOf(src));
  return `${width}x${height}`;
};
const allIcons = [...manifest.icons, ...manifest.shortcuts.flatMap(({ icons }) => icons)];

describe.each([
  ["the root of a host", "https://night-market.example/manifest.webmanifest"],
  ["a sub-path", "https://night-market.example/apps/nidor/manifest.webmanifest"],
])("served from %s", (_where, address) => {
  const folder = new URL("./", address).href;
  const start = new URL(manifest.start_url, address);
  const scope = new URL(manifest.scope, address);

  it("starts in its own folder and stays within it", () => {
    expect(start.href).toBe(folder);
    expect(scope.href).toBe(folder);
  });

  it("has an identity of its own among the apps of one host", () => {
    // The id is read against the origin of the start address, not against the manifest: "./" would be the host itself.
    const id = new URL(manifest.id, start.origin);
    expect(id.origin).toBe(start.origin);
    expect(id.href).toBe("https://night-market.example/nidor");
  });

  it("leads from each shortcut to a place within its scope", () => {
    for (const { url } of manifest.shortcuts)
      expect(new URL(url, address).href.startsWith(folder)).toBe(true);
  });

  it("finds each picture beside it", () => {
    for (const { src } of [...allIcons, ...manifest.screenshots]) {
      const found = new URL(src, address);
      expect(found.href.startsWith(folder)).toBe(true);
      expect(existsSync(fileURLToPath(new URL(found.href.slice(folder.length), PUBLIC)))).toBe(true);
    }
  });
});

it("is named on the home screen, where twelve letters have room, as the page names itself", () => {
  expect(manifest.short_name.length).toBeLessThanOrEqual(12); // common practice
  const page = readFileSync(new URL("../../src/index.html", import.meta.url), "utf8");
  expect(page).toContain(`<title>${manifest.name}</title>`);
  expect(page).toContain(`content="${manifest.description}"`);
  expect(page).toContain('<link rel="manifest" href="manifest.webmanifest" />');
  expect(page).toContain(`<meta name="theme-color" content="${manifest.theme_color}"`);
});

describe("icons", () => {
  it("are as large as they say", () => {
    for (const { src, type, sizes } of allIcons) {
      if (type === "image/png") expect(`${src} ${pixelsOf(src)}`).toBe(`${src} ${sizes}`);
      else expect([sizes, fileOf(src).toString()]).toEqual(["any", expect.stringMatching(/^<svg /)]);
    }
  });

  it("come in the sizes that a browser asks for before it offers to install: 192 and 512 px", () => {
    // Chromium's criteria for installing; common practice.
    const plain = manifest.icons.filter(({ purpose }) => purpose === "any").map(({ sizes }) => sizes);
    expect(plain).toEqual(expect.arrayContaining(["192x192", "512x512"]));
  });

  it("that may be cut to any shape are filled to the edge, with all that matters in the safe zone", () => {
    const maskable = manifest.icons.filter(({ purpose }) => purpose === "maskable");
    expect(maskable.length).toBeGreaterThan(0);
    for (const { src } of maskable) {
      const png = readPng(fileOf(src));
      expect(png.hasAlpha).toBe(false);
      // The safe zone is a circle around the middle with two fifths of the icon's size for its radius.
      const [ground, middle, radius] = [png.pixelAt(0, 0), png.width / 2, png.width * 0.4];
      let drawn = 0;
      for (let y = 0; y < png.height; y += 1)
        for (let x = 0; x < png.width; x += 1) {
          const isGround = png.pixelAt(x, y).every((value, i) => value === ground[i]);
          if (isGround) continue;
          drawn += 1;
          const away = Math.hypot(x + 0.5 - middle, y + 0.5 - middle);
          if (away > radius) throw new Error(`${src}: something is drawn at ${x}, ${y}`);
        }
      expect(drawn).toBeGreaterThan(1000);
    }
  });
});

describe("screenshots", () => {
  it("are as large as they say, and lie the way they say", () => {
    for (const { src, sizes, form_factor } of manifest.screenshots) {
      const { width, height } = readPng(fileOf(src));
      expect(`${width}x${height}`).toBe(sizes);
      expect(width > height ? "wide" : "narrow").toBe(form_factor);
    }
  });

  it("show the app on a phone and on a wide screen, within what an install dialog takes", () => {
    expect(new Set(manifest.screenshots.map(({ form_factor }) => form_factor))).toEqual(
      new Set(["narrow", "wide"]),
    );
    // Chromium takes sides of 320 to 3840 px, the longer at most 2.3 times the shorter. Value from memory.
    for (const { src } of manifest.screenshots) {
      const { width, height } = readPng(fileOf(src));
      const [short, long] = [Math.min(width, height), Math.max(width, height)];
      expect(short).toBeGreaterThanOrEqual(320);
      expect(long).toBeLessThanOrEqual(3840);
      expect(long / short).toBeLessThanOrEqual(2.3);
    }
  });
});
