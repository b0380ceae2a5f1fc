/**
 * How long each tap takes until the screen answers, and what moves by itself: `tsx test/bench/interactions.ts
 * [--slower N] [--meals N]`. A phone-sized Chromium, its processor slowed four times unless told, walks through every
 * place and the heavy actions over 10 000 meals, and then looks at live traces. Ends with 1 above the budget of 100 ms,
 * if anything moved, or if the traces are not smooth.
 *
 * @see W3C, Event Timing API (entries with an interaction id; durations are rounded to 8 ms)
 */
import { parseArgs } from "node:util";
import { fileURLToPath } from "node:url";
import { build } from "vite";
import { launchChromium } from "../browser/emulatedPeripheral.js";
import { introduced } from "../browser/introduced.js";
import { recordShifts, takeShifts } from "../browser/layoutShifts.js";
import { putMeals } from "../browser/mealsTable.js";
import { serveUnder } from "../browser/serveUnder.js";
import { manyMeals } from "../meals/manyMeals.js";
import { recordInteractions, takeInteractions } from "./interactionTimes.js";
import { liveFrames, paceTheTable, printFrames } from "./liveFrames.js";
import { walkThroughTheApp } from "./walk.js";

const BUDGET_MS = 100;
/** Share of the frames of live traces that may take longer than 50 ms: less than one a second. */
const MOST_LONG_FRAMES = 0.01;
const { values } = parseArgs({
  options: { slower: { type: "string", default: "4" }, meals: { type: "string", default: "10000" } },
});
const site = fileURLToPath(new URL("../output/site", import.meta.url));
if (!process.env.NOBUILD)
  await build({
    configFile: fileURLToPath(new URL("../../vite.config.ts", import.meta.url)),
    logLevel: "error",
    build: { outDir: site, emptyOutDir: true },
  });
const host = await serveUnder("/", site);
const browser = await launchChromium();
const PHONE = {
  viewport: { width: 390, height: 844 },
  locale: "en-GB",
  timezoneId: "Europe/Berlin",
  hasTouch: true,
  isMobile: true,
};
const context = await browser.newContext(PHONE);
await introduced(context);
const page = await context.newPage();
page.setDefaultTimeout(25_000);
await recordShifts(page);
await recordInteractions(page);
await page.goto(host.url);
await page.getByRole("link", { name: "Meals" }).waitFor();
await page.evaluate(() => navigator.serviceWorker.ready);
await putMeals(page, manyMeals(Number(values.meals)));
await page.reload();
await page.waitForTimeout(2000);
const session = await context.newCDPSession(page);
await session.send("Emulation.setCPUThrottlingRate", { rate: Number(values.slower) });

console.log(`processor ${values.slower} times slower, ${values.meals} meals; worst answer of each step:`);
let worstMs = 0;
let seen = 0;
let shifted = 0;
await walkThroughTheApp(page, async (name) => {
  const answers = await takeInteractions(page);
  const worst = answers.reduce((most, one) => (one.ms > most.ms ? one : most), { ms: 0, what: "" });
  worstMs = Math.max(worstMs, worst.ms);
  seen += answers.length;
  const over = worst.ms > BUDGET_MS ? "  TOO SLOW" : "";
  console.log(`${String(worst.ms).padStart(5)} ms  ${name} ${worst.what}${over}`);
  for (const shift of await takeShifts(page)) {
    shifted += 1;
    console.log(`          moved by itself: ${shift}`);
  }
});
console.log(`${seen} answers measured, worst ${worstMs} ms of at most ${BUDGET_MS} ms`);
console.log(`${shifted} layout shifts`);
await context.close();
const liveContext = await browser.newContext({ ...PHONE, deviceScaleFactor: 2 });
await introduced(liveContext);
const livePage = await liveContext.newPage();
await paceTheTable(livePage);
const frames = await liveFrames(livePage, host.url, Number(values.slower));
printFrames(frames, console.log);
const isRough = Object.values(frames.live).some(({ long, count }) => long > MOST_LONG_FRAMES * count);
await browser.close();
await host.close();
// Without a single answer nothing was measured.
process.exit(seen === 0 || worstMs > BUDGET_MS || shifted > 0 || isRough ? 1 : 0);
