/** Builds the app once and serves the build to the browser tests: `inject("appUrl")` in a test is where it stands. */
import { fileURLToPath } from "node:url";
import { build, preview, type PreviewServer } from "vite";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    appUrl: string;
  }
}

/** Apart from `dist`, so that a test run does not replace what somebody is serving. */
const OUT = fileURLToPath(new URL("../output/site", import.meta.url));
const CONFIG = fileURLToPath(new URL("../../vite.config.ts", import.meta.url));

let server: PreviewServer | undefined;

export async function setup(project: TestProject): Promise<void> {
  const options = {
    configFile: CONFIG,
    logLevel: "warn",
    build: { outDir: OUT, emptyOutDir: true },
  } as const;
  await build(options);
  server = await preview({ ...options, preview: { host: "127.0.0.1", port: 0, open: false } });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error("the build is not being served");
  project.provide("appUrl", url);
}

export async function teardown(): Promise<void> {
  await server?.close();
}
