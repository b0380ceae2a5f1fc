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

/**
 * What a page of Nidor may load and reach: its own origin, and nothing else. No inline script or style, no plug-in, no
 * form that leaves. A host that can set headers should send the same policy: workers take theirs from the response.
 *
 * @see W3C, Content Security Policy Level 3; 'wasm-unsafe-eval' lets TensorFlow.js compile WASM, and no script text
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** Writes the policy into the built page, before anything it could load. Not in development: there Vite injects code. */
function stateContentSecurityPolicy(): Plugin {
  return {
    name: "state-content-security-policy",
    apply: "build",
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "Content-Security-Policy", content: CONTENT_SECURITY_POLICY },
        injectTo: "head-prepend",
      },
    ],
  };
}

export default defineConfig({
  root: "src",
  base: "./",
  publicDir: "../public",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: { outDir: "../dist", emptyOutDir: true, target: "es2023", chunkSizeWarningLimit: 2000 },
  // The nets are no TensorFlow.js layers, and the layers register themselves on being imported: left out, because unused.
  worker: {
    format: "es",
    rolldownOptions: { treeshake: { moduleSideEffects: [{ test: /tfjs-layers/, sideEffects: false }] } },
  },
  preview: { headers: { "Content-Security-Policy": CONTENT_SECURITY_POLICY } },
  plugins: [
    shipFiles(),
    stateContentSecurityPolicy(),
    VitePWA({
      injectRegister: false,
      registerType: "prompt",
      manifest: false,
      workbox: {
        globPatterns: ["**/*.{html,js,css,svg,png,webmanifest,json,jsonl,wasm}"],
        maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
        cleanupOutdatedCaches: true,
        // A phone may lose its network in the very first visit.
        clientsClaim: true,
      },
    }),
  ],
});
