/** A Chromium with a profile on the disk that can be killed without a word, as a phone does when it needs room. */
import { spawn } from "node:child_process";
import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import { findChromium } from "./findChromium.js";

export interface KillableChromium {
  readonly page: Page;
  /** Ends all its processes at once; nothing is told to them. */
  kill(): Promise<void>;
}

/** @param profile - an existing folder; it outlives the browser */
export async function startKillableChromium(profile: string): Promise<KillableChromium> {
  const portFile = join(profile, "DevToolsActivePort");
  await rm(portFile, { force: true });
  const browserProcess = spawn(
    findChromium(),
    [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--remote-debugging-port=0",
      `--user-data-dir=${profile}`,
      "about:blank",
    ],
    { detached: true, stdio: "ignore" }, // a group of its own, so that its children go with it
  );
  const gone = new Promise((resolve) => browserProcess.once("exit", resolve));
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portOf(portFile)}`);
  const context = browser.contexts()[0] ?? (await browser.newContext());
  return {
    page: await context.newPage(),
    async kill() {
      if (browserProcess.pid !== undefined) process.kill(-browserProcess.pid, "SIGKILL");
      await gone;
      await browser.close().catch(() => undefined);
    },
  };
}

async function portOf(file: string): Promise<string> {
  for (let attempt = 0; attempt < 300; attempt += 1) {
    const text = await readFile(file, "utf8").catch(() => "");
    const [port, path] = text.split("\n");
    if (port !== undefined && path !== undefined) return port;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error("the browser did not say where it listens");
}
