import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { findChromium } from "./findChromium.js";

let folder: string;
const program = (name: string, mode = 0o755): string => {
  const path = join(folder, name);
  writeFileSync(path, "#!/bin/sh\n");
  chmodSync(path, mode);
  return path;
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "chromium-"));
  vi.stubEnv("CHROME", "");
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

it("takes what CHROME names before anything else", () => {
  program("chromium");
  const own = program("my-own");
  vi.stubEnv("PATH", folder);
  vi.stubEnv("CHROME", own);
  expect(findChromium()).toBe(own);
});

it("says so if CHROME names nothing that runs, and does not fall back", () => {
  program("chromium");
  vi.stubEnv("PATH", folder);
  vi.stubEnv("CHROME", join(folder, "nothing"));
  expect(findChromium).toThrow(/CHROME is set/);
});

it("takes the first name on the PATH that runs", () => {
  program("chromium", 0o644);
  program("google-chrome");
  const second = program("chromium-browser");
  vi.stubEnv("PATH", `${join(folder, "nowhere")}${delimiter}${folder}`);
  expect(findChromium()).toBe(second);
});
