/** The plainest static host there is: files of one folder under a sub-path, "not found" for all else, no headers. */
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const MIME: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".jsonl": "application/jsonl",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

export interface StaticHost {
  /** With a slash at its end. */
  readonly url: string;
  /** Paths that were asked for and are not there. */
  readonly notFound: readonly string[];
  close(): Promise<void>;
}

/** @param path - such as "/sub/" */
export async function serveUnder(path: string, folder: string): Promise<StaticHost> {
  const notFound: string[] = [];
  const server = createServer((request, response) => {
    const asked = new URL(request.url ?? "/", "http://host.invalid").pathname;
    const inside = normalize(asked.endsWith("/") ? `${asked}index.html` : asked);
    const missing = () => {
      notFound.push(asked);
      response.writeHead(404).end();
    };
    if (!inside.startsWith(path)) return missing();
    readFile(join(folder, inside.slice(path.length))).then(
      (content) => response.writeHead(200, { "content-type": MIME[extname(inside)] ?? "" }).end(content),
      missing,
    );
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${path}`,
    notFound,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
