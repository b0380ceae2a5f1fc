/**
 * How long each tap takes until the screen answers, and what moves by itself: `tsx test/bench/interactions.ts
 * [--slower N] [--meals N] [--walks N]`. A phone-sized Chromium, its processor slowed four times unless told, walks
 * through every place and the heavy actions over 10 000 meals, four times, and then looks at live traces. Ends with 1
 * if the interaction to next paint of a step, over all walks, is longer than the budget of 100 ms, if anything moved,
 * or if the traces are not smooth. Single answers over the budget are printed with what ran meanwhile.
 *
 * @see W3C, Event Timing API (entries with an interaction id; durations are rounded to 8 ms)
 * @see J. Wagner, "Interaction to Next Paint (INP)", web.dev, 2022
 */
import { parseArgs } from "node:util";
import { fileURLToPath } from "node:url";
import { build } from "vite";
import { launchChromium } from "../browser/emulatedPeripheral.js";
import { introduced } from "../browser/introduced.js";
import { recordShifts } from "../browser/layoutShifts.js";
import { putMeals } from "../browser/mealsTable.js";
import { serveUnder } from "../browser/serveUnder.js";
import { manyMeals } from "../meals/manyMeals.js";
import { recordInteractions, takeInteractions } from "./interactionTimes.js";
import { liveFrames, paceTheTable, printFrames } from "./liveFrames.js";
import { stepShifts } from "./walk/stepShifts.js";
import { walkThroughTheApp } from "./walk/walkThroughTheApp.js";
import { createWalkTimes } from "./walkTimes.js";

const BUDGET_MS = 100;
/** Share of the frames of live traces that may take longer than 50 ms: less than one a second. */
const MOST_LONG_FRAMES = 0.01;
const { values } = parseArgs({
  options: {
    slower: { type: "string", default: "4" },
    meals: { type: "string", default: "10000" },
    walks: { type: "string", default: "4" },
  },
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
const times = createWalkTimes();
const shifts: string[] = [];
for (let walk = 0; walk < Number(values.walks); walk += 1) await walkOnce();
const { slower, meals, walks } = values;
console.log(
  `processor ${slower} times slower, ${meals} meals, ${walks} walks: median, INP and worst answer of each step`,
);
const steps = times.steps();
for (const { step, medianMs, inpMs, worst } of steps) {
  const figures = [medianMs, inpMs, worst.ms].map((ms) => String(ms).padStart(5)).join(" ");
  const verdict = inpMs > BUDGET_MS ? "  TOO SLOW" : "";
  const over = worst.ms > BUDGET_MS ? `  ${worst.what}` : "";
  console.log(`${figures} ms  ${step}${verdict}${over}`);
}
const highestMs = Math.max(...steps.map(({ inpMs }) => inpMs));
console.log(
  `${times.count()} answers measured in ${steps.length} steps: ${times.countOver(BUDGET_MS)} over ${BUDGET_MS} ms, ` +
    `worst ${Math.max(...steps.map(({ worst }) => worst.ms))} ms; highest INP ${highestMs} ms of at most ${BUDGET_MS} ms`,
);
for (const shift of shifts) console.log(`moved by itself: ${shift}`);
console.log(`${shifts.length} layout shifts`);
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
process.exit(times.count() === 0 || highestMs > BUDGET_MS || shifts.length > 0 || isRough ? 1 : 0);

/** A fresh phone, with its meals, at the first page of the first run. */
async function walkOnce(): Promise<void> {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  page.setDefaultTimeout(25_000);
  await recordShifts(page);
  await recordInteractions(page);
  await page.goto(host.url);
  await page.getByText("1 of 4").waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await putMeals(page, manyMeals(Number(values.meals)));
  await page.reload();
  await page.waitForTimeout(2000);
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: Number(values.slower) });
  await walkThroughTheApp(page, async (step) => {
    times.add(step, await takeInteractions(page, BUDGET_MS));
    shifts.push(...(await stepShifts(page, step)));
  });
  await context.close();
}
