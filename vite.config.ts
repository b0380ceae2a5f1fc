import { readFileSync, readdirSync } from "node:fs";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";

/** Serves and ships `models/` beside the app: code fetches it, and never imports it. */
function shipModels(): Plugin {
  const folder = new URL("./models/", import.meta.url);
  return {
    name: "ship-models",
    configureServer(server) {
      server.middlewares.use("/models", (request, response, next) => {
        const name = (request.url ?? "").split("?")[0]?.slice(1) ?? "";
        if (!readdirSync(folder).includes(name)) return next();
        response.end(readFileSync(new URL(name, folder)));
      });
    },
    generateBundle() {
      for (const name of readdirSync(folder)) {
        this.emitFile({
          type: "asset",
          fileName: `models/${name}`,
          source: readFileSync(new URL(name, folder)),
        });
      }
    },
  };
}

export default defineConfig({
  root: "src",
  base: "./",
  publicDir: "../public",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: { outDir: "../dist", emptyOutDir: true, target: "es2023" },
  worker: { format: "es" },
  plugins: [
    shipModels(),
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
