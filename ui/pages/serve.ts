/** Serves the built gallery and the views that Rust wrote, to a browser on this machine alone. */
import { readFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const KIND: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".woff2": "font/woff2",
};

/** Where the gallery is built, and where `BAYHAND_VIEWS` says that the views lie. */
export const BUILT = new URL("../dist-gallery/", import.meta.url).pathname;
export const VIEWS = process.env.BAYHAND_VIEWS ?? new URL("../.views/", import.meta.url).pathname;

/** A server on a free port, and its address. */
export async function serve(): Promise<{ server: Server; at: string }> {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://here").pathname));
    const file = path.startsWith("/views/") ? join(VIEWS, path.slice(7)) : join(BUILT, path);
    readFile(file).then(
      (bytes) => response.writeHead(200, { "content-type": KIND[extname(file)] ?? "application/octet-stream" }).end(bytes),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((then) => server.listen(0, "127.0.0.1", then));
  return { server, at: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}
