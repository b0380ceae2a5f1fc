/** Renders the icons and the manifest's screenshots into `public/`: `npx tsx test/browser/gallery/drawIcons.ts` */
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { buildGallery } from "./buildGallery.js";
import { serveFolder } from "./serveFolder.js";

const publicDir = fileURLToPath(new URL("../../../public/", import.meta.url));
const ICONS = [
  { from: "icon.svg", to: "icon-180.png", size: 180 },
  { from: "icon.svg", to: "icon-192.png", size: 192 },
  { from: "icon.svg", to: "icon-512.png", size: 512 },
  { from: "icon-maskable.svg", to: "icon-maskable-512.png", size: 512 },
];
const SCREENS = [
  { screen: "plate-filled", to: "screen-plate.png", width: 390, height: 844 },
  { screen: "finding-smelled", to: "screen-finding.png", width: 390, height: 844 },
  { screen: "finding-smelled", to: "screen-wide.png", width: 1024, height: 768 },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"],
});
for (const { from, to, size } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const svg = await readFile(`${publicDir}${from}`, "utf8");
  await page.setContent(
    `<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`,
  );
  await page.screenshot({ path: `${publicDir}${to}`, omitBackground: true });
  await page.close();
}
const { url, server } = await serveFolder(await buildGallery());
for (const { screen, to, width, height } of SCREENS) {
  const page = await browser.newPage({ viewport: { width, height } });
  await page.goto(`${url}/?screen=${screen}&theme=light`);
  await page.screenshot({ path: `${publicDir}${to}` });
  await page.close();
}
await browser.close();
server.close();
