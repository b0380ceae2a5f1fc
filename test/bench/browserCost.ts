/** What teaching costs in headless Chromium: wall time, long tasks of the main thread, tensors left behind. */
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { availableParallelism, loadavg } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { build, type InlineConfig, type Plugin, preview } from "vite";
import { findChromium } from "../browser/findChromium.js";

const SNIFFS = 400;
const TEACHINGS = 10;
const ROOT = fileURLToPath(new URL("./page", import.meta.url));
const OUT = fileURLToPath(new URL("../output/bench", import.meta.url));

function shipWasm(): Plugin {
  const folder = dirname(createRequire(import.meta.url).resolve("@tensorflow/tfjs-backend-wasm"));
  return {
    name: "ship-wasm",
    generateBundle() {
      for (const name of readdirSync(folder).filter((file) => file.endsWith(".wasm")))
        this.emitFile({ type: "asset", fileName: `wasm/${name}`, source: readFileSync(join(folder, name)) });
    },
  };
}

/** Builds the page, opens it and prints what it measured. */
export async function browserCost(print: (line: string) => void): Promise<void> {
  const options: InlineConfig = {
    configFile: false,
    root: ROOT,
    base: "./",
    logLevel: "error",
    build: { outDir: OUT, emptyOutDir: true, target: "es2023" },
    worker: { format: "es" },
    plugins: [shipWasm()],
  };
  await build(options);
  const server = await preview({ ...options, preview: { host: "127.0.0.1", port: 0, open: false } });
  const browser = await chromium.launch({ executablePath: findChromium(), args: ["--no-sandbox"] });
  try {
    const page = await browser.newPage();
    await page.goto(server.resolvedUrls?.local[0] ?? "");
    const load = loadavg()[0]?.toFixed(1);
    print(
      `headless Chromium ${browser.version()} on ${availableParallelism()} cores, load ${load} at the start`,
    );
    const cost = await page.evaluate((sniffs) => window.measureTeaching(sniffs), SNIFFS);
    print(
      `a whole nose from ${SNIFFS} sniffs (${cost.features}, 4 groups, 4 horizons; ${cost.model} on ` +
        `${cost.backend}): ${(cost.teachMs / 1000).toFixed(1)} s of wall time, and ` +
        `${(cost.checksMs / 1000).toFixed(1)} s for the checks after it, which can be left out`,
    );
    const longest = Math.max(0, ...cost.longTasks);
    print(
      `tasks over 50 ms on the main thread: ${cost.longTasks.length}, the longest ${longest.toFixed(0)} ms`,
    );
    print(`one finding: ${cost.findingMs.toFixed(1)} ms`);
    const { tensors, bytes } = await page.evaluate((times) => window.measureMemory(times), TEACHINGS);
    print(`tensors before and after each of ${TEACHINGS} teachings: ${tensors.join(" ")}`);
    print(`their bytes before and after: ${bytes[0]} and ${bytes.at(-1)}`);
  } finally {
    await browser.close();
    await server.close();
  }
}
