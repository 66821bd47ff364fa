import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, resolve, sep } from "node:path";
import { securityHeaders } from "./policy.mjs";

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/**
 * Serves a folder on this computer only, with the pages' policy.
 * @param {string} folder
 * @param {{ port: number, home?: string, taken?: (port: number, next: number) => void }} options port 0 takes any free one;
 *   `home` is where the root leads; `taken` is told of each port that is in use
 * @returns {Promise<{ port: number, close: () => Promise<void> }>}
 */
export async function serve(folder, { port, home, taken }) {
  const root = resolve(folder);
  const server = createServer((request, response) => answer(request, response, root, home));
  for (let at = port; ; at++) {
    const error = await listen(server, at);
    if (!error) break;
    if (error.code !== "EADDRINUSE" && error.code !== "EACCES") throw error;
    if (at >= port + 50 || at >= 65535) throw new Error(`no free port from ${port} to ${at}`);
    taken?.(at, at + 1);
  }
  return {
    port: server.address().port,
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
}

function listen(server, port) {
  return new Promise((settle) => {
    const failed = (error) => settle(error);
    server.once("error", failed);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", failed);
      settle(undefined);
    });
  });
}

function answer(request, response, root, home) {
  const end = (status, headers, text = "") => {
    response.writeHead(status, { ...securityHeaders, "Content-Type": "text/plain; charset=utf-8", ...headers });
    response.end(text);
  };
  if (request.method !== "GET" && request.method !== "HEAD")
    return end(405, { Allow: "GET, HEAD" }, "only reading is possible here\n");
  const path = pathOf(request.url);
  if (path === "/" && home) return end(302, { Location: home });
  let file = path === undefined ? undefined : resolve(root, `.${path}`);
  if (!file || !(file + sep).startsWith(root + sep)) return end(404, {}, "there is no such page\n");
  if (existsSync(file) && statSync(file).isDirectory()) {
    if (!path.endsWith("/")) return end(302, { Location: `${path}/` });
    file = join(file, "index.html");
  }
  if (!existsSync(file)) return end(404, {}, "there is no such page\n");
  response.writeHead(200, { ...securityHeaders, "Content-Type": types[extname(file)] ?? "application/octet-stream" });
  if (request.method === "HEAD") return response.end();
  return createReadStream(file).pipe(response);
}

function pathOf(url) {
  try {
    return decodeURIComponent(new URL(url, "http://localhost").pathname);
  } catch {
    return undefined;
  }
}
