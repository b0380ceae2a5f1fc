import { readFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/** The policy that the app ships under: styles and scripts only from its own files. */
const POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:";

/** Serves one folder on a free port of this machine only. */
export async function serveFolder(folder: string): Promise<{ url: string; server: Server }> {
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? "/", "http://localhost").pathname);
    const file = join(folder, path === "/" ? "index.html" : path);
    readFile(file).then(
      (bytes) => {
        const type = TYPES[extname(file)] ?? "application/octet-stream";
        response.writeHead(200, { "content-type": type, "content-security-policy": POLICY });
        response.end(bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, server };
}
