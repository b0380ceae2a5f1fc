import { fileURLToPath } from "node:url";
import { build } from "vite";

/** Builds the gallery and gives the folder it is in. */
export async function buildGallery(): Promise<string> {
  const root = fileURLToPath(new URL(".", import.meta.url));
  const outDir = fileURLToPath(new URL("../../output/gallery/", import.meta.url));
  await build({
    configFile: false,
    root,
    base: "./",
    publicDir: false,
    logLevel: "error",
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
    build: { outDir, emptyOutDir: true, target: "es2023" },
  });
  return outDir;
}
