import { readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";

/** Files that the app fetches by name and never imports: the demo nose and samples, and the WASM backend. */
const shipped: Readonly<Record<string, string>> = {
  ...filesIn(new URL("./models/", import.meta.url).pathname, "models", /\.(json|jsonl)$/),
  ...filesIn(
    dirname(createRequire(import.meta.url).resolve("@tensorflow/tfjs-backend-wasm")),
    "wasm",
    /\.wasm$/,
  ),
};

function filesIn(folder: string, under: string, wanted: RegExp): Record<string, string> {
  const names = readdirSync(folder).filter((name) => wanted.test(name));
  return Object.fromEntries(names.map((name) => [`${under}/${name}`, join(folder, name)]));
}

function shipFiles(): Plugin {
  return {
    name: "ship-files",
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const file = shipped[(request.url ?? "").split("?")[0]?.slice(1) ?? ""];
        if (file === undefined) return next();
        if (file.endsWith(".wasm")) response.setHeader("content-type", "application/wasm");
        response.end(readFileSync(file));
      });
    },
    generateBundle() {
      for (const [fileName, file] of Object.entries(shipped)) {
        this.emitFile({ type: "asset", fileName, source: readFileSync(file) });
      }
    },
  };
}

export default defineConfig({
  root: "src",
  base: "./",
  publicDir: "../public",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: { outDir: "../dist", emptyOutDir: true, target: "es2023", chunkSizeWarningLimit: 2000 },
  worker: { format: "es" },
  plugins: [
    shipFiles(),
    VitePWA({
      injectRegister: false,
      registerType: "prompt",
      manifest: false,
      workbox: {
        globPatterns: ["**/*.{html,js,css,svg,png,webmanifest,json,jsonl,wasm}"],
        maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
        cleanupOutdatedCaches: true,
      },
    }),
  ],
});
