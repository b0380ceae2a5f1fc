import { defineConfig } from "vitest/config";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["test/**/*.test.{ts,tsx}"],
          exclude: ["test/browser/**"],
          benchmark: { include: ["test/bench/**/*.bench.ts"] },
          environment: "node",
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["test/browser/**/*.test.ts"],
          globalSetup: ["test/browser/serveBuild.ts"],
          environment: "node",
          testTimeout: 400_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
