/**
 * Pictures of every screen in every state, and axe's word on each.
 * `npx tsx test/browser/gallery/screenshots.ts [parts of names, with commas] [--quick] [--large] [--german]`
 * A picture's name ends with its width and theme: `plate-first,390-dark` takes one screen everywhere, and all of one kind.
 */
import { mkdir } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { launchChromium } from "../emulatedPeripheral.js";
import { buildGallery } from "./buildGallery.js";
import { faultsOf, galleryNames } from "./faultsOf.js";
import { serveFolder } from "./serveFolder.js";

interface Size {
  readonly width: number;
  readonly height: number;
}
const SIZES: readonly Size[] = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
];
/** All pictures take long: a machine busy with something else may not end the run before its faults are told. */
const PATIENCE_MS = 180_000;
const options = process.argv.slice(2);
const wanted = (options.find((option) => !option.startsWith("--")) ?? "").split(",");
const quick = options.includes("--quick");
const large = options.includes("--large");
const language = options.includes("--german") ? "de" : "en";

const outputDir = fileURLToPath(new URL("../../output/screens/", import.meta.url));
await mkdir(outputDir, { recursive: true });
const { url, server } = await serveFolder(await buildGallery());
const browser = await launchChromium();
let faults = 0;

for (const theme of ["light", "dark"] as const) {
  for (const size of quick ? SIZES.slice(1, 2) : SIZES) {
    const context = await browser.newContext({ viewport: size, colorScheme: theme, bypassCSP: false });
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    page.on("console", (message) => {
      if (message.type() === "error") tell(`${page.url()}: ${message.text()}`);
    });
    page.on("pageerror", (error) => tell(`${page.url()}: ${error.message}`));
    const suffix = `${size.width}-${theme}`;
    for (const name of await galleryNames(page, url)) {
      if (wanted.some((part) => `${name}-${suffix}`.includes(part))) await twice(page, name, size, suffix);
    }
    await context.close();
  }
}
await browser.close();
server.close();
console.log(`${faults} faults`);
process.exitCode = faults === 0 ? 0 : 1;

/** At once: a run that is ended early has told what it found. */
function tell(fault: string): void {
  faults += 1;
  console.log(fault);
}

/** A machine that stood still for a while ends no run: the picture is taken anew, and if that fails too, it is told. */
async function twice(...of: Parameters<typeof picture>): Promise<void> {
  try {
    await picture(...of).catch(() => picture(...of));
  } catch (error) {
    tell(`${of[1]} ${of[3]}: no picture, ${String(error)}`);
  }
}

async function picture(page: Page, name: string, size: Size, suffix: string): Promise<void> {
  await page.setViewportSize(size);
  for (const fault of await faultsOf(page, { url, name, language, large })) {
    tell(`${name} ${suffix}: ${fault}`);
  }
  const tail = `${large ? "-large" : ""}${language === "en" ? "" : `-${language}`}`;
  await page.screenshot({ path: `${outputDir}${name}-${suffix}${tail}.png`, fullPage: true });
}
