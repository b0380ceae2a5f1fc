/** Bundles one module and serves a page that runs it, for tests of a part without the app. */
import http from "node:http";
import type { AddressInfo } from "node:net";
import { build } from "vite";

export interface ServedModule {
  readonly url: string;
  close(): Promise<void>;
}

/** @param html - the page's body; the module runs after it */
export async function serveModule(entry: string, html: string): Promise<ServedModule> {
  const script = await bundle(entry);
  const page = `<!doctype html><meta charset="utf-8"><title>test</title>${html}<script type="module" src="/m.js"></script>`;
  const server = http.createServer((request, response) => {
    const isScript = request.url === "/m.js";
    response.setHeader("content-type", isScript ? "text/javascript" : "text/html");
    response.end(isScript ? script : page);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

async function bundle(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "warn",
    build: { write: false, minify: false, rollupOptions: { input: entry } },
  });
  const outputs = Array.isArray(built) ? built : "output" in built ? [built] : [];
  const chunk = outputs.flatMap(({ output }) => output).find((part) => part.type === "chunk");
  if (chunk?.type !== "chunk") throw new Error(`nothing was bundled from ${entry}`);
  return chunk.code;
}
