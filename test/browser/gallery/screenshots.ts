/**
 * Pictures of every screen in every state, and axe's word on each.
 * `npx tsx test/browser/gallery/screenshots.ts [part of a name] [--quick] [--large]`
 */
import { mkdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { chromium, type Page } from "playwright-core";
import { buildGallery } from "./buildGallery.js";
import { serveFolder } from "./serveFolder.js";

const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
interface Size {
  readonly width: number;
  readonly height: number;
}
const SIZES: readonly Size[] = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
];
const options = process.argv.slice(2);
const wanted = options.find((option) => !option.startsWith("--")) ?? "";
const quick = options.includes("--quick");
const large = options.includes("--large");
const language = options.includes("--german") ? "de" : "en";

const axeSource = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const outputDir = fileURLToPath(new URL("../../output/screens/", import.meta.url));
await mkdir(outputDir, { recursive: true });
const { url, server } = await serveFolder(await buildGallery());
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ARGUMENTS,
});
const faults: string[] = [];

for (const theme of ["light", "dark"] as const) {
  for (const size of quick ? SIZES.slice(1, 2) : SIZES) {
    const context = await browser.newContext({ viewport: size, colorScheme: theme, bypassCSP: false });
    const page = await context.newPage();
    page.on("console", (message) => {
      if (message.type() === "error") faults.push(`${page.url()}: ${message.text()}`);
    });
    page.on("pageerror", (error) => faults.push(`${page.url()}: ${error.message}`));
    for (const name of await names(page)) await picture(page, name, size, `${size.width}-${theme}`);
    await context.close();
  }
}
await browser.close();
server.close();
console.log(faults.length === 0 ? "no faults" : faults.join("\n"));
console.log(`${faults.length} faults`);
process.exitCode = faults.length === 0 ? 0 : 1;

async function names(page: Page): Promise<string[]> {
  await page.goto(url);
  const all = await page.locator("li a").allTextContents();
  return all.filter((name) => name.includes(wanted));
}

async function picture(page: Page, name: string, size: Size, suffix: string): Promise<void> {
  await page.setViewportSize(size);
  await page.goto(`${url}/?screen=${name}&language=${language}`);
  // Twice the browser's text size, as a person with weak eyes sets it.
  if (large) await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
  await page.waitForTimeout(150);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  if (overflow > 0) faults.push(`${name} ${suffix}: wider than the screen by ${overflow} px`);
  for (const small of await smallTargets(page)) faults.push(`${name} ${suffix}: ${small}`);
  const tail = `${large ? "-large" : ""}${language === "en" ? "" : `-${language}`}`;
  // The window grows to the whole page, so that the bar at the bottom covers nothing.
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  const { width } = page.viewportSize() ?? { width: 390 };
  await page.setViewportSize({ width, height });
  await page.screenshot({ path: `${outputDir}${name}-${suffix}${tail}.png`, fullPage: true });
  for (const violation of await runAxe(page)) faults.push(`${name} ${suffix}: ${violation}`);
}

/** What is tapped must be at least 44 px high and wide, but for links within text. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("button, select, input, summary, nav a, textarea")]
      .map((element) => ({ element, box: (element.closest("label") ?? element).getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < 44 || box.width < 44))
      .map(({ element, box }) => `small target ${element.outerHTML.slice(0, 80)} ${box.width}x${box.height}`),
  );
}

interface AxeWindow {
  axe: {
    run: (options: object) => Promise<{
      violations: { id: string; help: string; nodes: { html: string; failureSummary?: string }[] }[];
    }>;
  };
}

async function runAxe(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    (window as unknown as AxeWindow).axe.run({
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }),
  );
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      ({ html, failureSummary = "" }) => `${id}: ${html.slice(0, 120)} ${failureSummary.slice(0, 160)}`,
    ),
  );
}
