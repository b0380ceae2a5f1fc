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
  await buildForUsers(options);
  server = await preview({ ...options, preview: { host: "127.0.0.1", port: 0, open: false } });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error("the build is not being served");
  project.provide("appUrl", url);
}

/** The test runner says NODE_ENV=test, and that would build another app than the one users get. */
async function buildForUsers(options: Parameters<typeof build>[0]): Promise<void> {
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = "production";
  try {
    await build(options);
  } finally {
    process.env.NODE_ENV = NODE_ENV;
  }
}

export async function teardown(): Promise<void> {
  await server?.close();
}
