/** Where is a Chromium to test with? */
import { spawnSync } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { chromium } from "playwright-core";

const NAMES = ["chromium", "chromium-browser", "google-chrome"];

/**
 * The path of a Chromium: what CHROME names, else one on the PATH, else Playwright's own, else Debian's, which is
 * installed if we may.
 *
 * @throws {Error} that says what to do, if there is none
 */
export function findChromium(): string {
  const named = process.env["CHROME"];
  if (named !== undefined && named !== "") {
    if (isProgram(named)) return named;
    throw new Error("CHROME is set, but names no program that can be run");
  }
  const found = firstOnPath() ?? playwrightsOwn() ?? installed();
  if (found !== undefined) return found;
  throw new Error(
    "No Chromium found. Put one on the PATH (on Debian: apt-get install chromium), " +
      "or run: npx playwright-core install chromium, or set CHROME to a Chromium of your own.",
  );
}

function firstOnPath(): string | undefined {
  const folders = (process.env["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find(isProgram);
}

function playwrightsOwn(): string | undefined {
  const path = chromium.executablePath();
  return path !== "" && isProgram(path) ? path : undefined;
}

/** Installs Debian's package where we are root, quietly. */
function installed(): string | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const aptGet = (...args: string[]) =>
    spawnSync("apt-get", ["-y", "-qq", ...args], {
      stdio: "ignore",
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    }).status === 0;
  const done = aptGet("update") && aptGet("install", "--no-install-recommends", "chromium");
  return done ? firstOnPath() : undefined;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
