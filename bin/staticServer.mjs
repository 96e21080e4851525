/** Serves a built folder and nothing else: right types, strict headers, text compressed, no old service worker kept. */
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer } from "node:http";
import { createServer as createSecureServer } from "node:https";
import { extname, join, normalize, sep } from "node:path";
import { createGzip } from "node:zlib";
import { headers } from "./headers.mjs";
import { certificatePath } from "./lan.mjs";

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".woff2": "font/woff2",
  ".bin": "application/octet-stream",
  ".wav": "audio/wav",
  ".mp3": "audio/mpeg",
  ".m4a": "audio/mp4",
  ".webm": "audio/webm",
  ".ogg": "audio/ogg",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
};

/** Files whose name holds a hash of their content never change; all else is asked for anew. */
const cacheFor = (path) => (/^\/assets\//.test(path) ? "public, max-age=31536000, immutable" : "no-cache");
/** Text shrinks to a third; pictures, sound and models do not. */
const shrinks = new Set([".html", ".js", ".css", ".json", ".webmanifest", ".svg", ".txt"]);
const isServiceWorker = (path) => /^\/(sw|workbox-[\w-]+)\.js$/.test(path);

/**
 * @param {string} root folder to serve
 * @returns {import("node:http").Server} not yet listening
 */
export const staticServer = (root) => createServer(serving(root, null));

/**
 * The same over https, and the certificate itself for a device to fetch and trust.
 * @param {{ cert: string, key: string }} certificate PEM
 * @returns {import("node:https").Server} not yet listening
 */
export const secureServer = (root, { cert, key }) => createSecureServer({ cert, key }, serving(root, cert));

function serving(root, certificate) {
  return async (request, response) => {
    const refuse = (status) => response.writeHead(status, headers).end();
    if (request.method !== "GET" && request.method !== "HEAD") return refuse(405);
    let path;
    try {
      path = decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname);
    } catch {
      return refuse(400);
    }
    if (certificate !== null && path === certificatePath) {
      const type = { "Content-Type": "application/x-x509-ca-cert", "Cache-Control": "no-store" };
      return response.writeHead(200, { ...headers, ...type }).end(certificate);
    }
    const file = normalize(join(root, path.endsWith("/") ? `${path}index.html` : path));
    if (!file.startsWith(normalize(root) + sep) || path.includes("\0")) return refuse(404);
    try {
      const found = await stat(file);
      if (!found.isFile()) return refuse(404);
      const isShrunk = shrinks.has(extname(file)) && /\bgzip\b/.test(request.headers["accept-encoding"] ?? "");
      response.writeHead(200, {
        ...headers,
        "Content-Type": types[extname(file)] ?? "application/octet-stream",
        ...(isShrunk ? { "Content-Encoding": "gzip" } : { "Content-Length": found.size }),
        Vary: "Accept-Encoding",
        "Cache-Control": isServiceWorker(path) ? "no-store" : cacheFor(path),
      });
      if (request.method === "HEAD") return response.end();
      const content = createReadStream(file).on("error", () => response.destroy());
      (isShrunk ? content.pipe(createGzip()) : content).pipe(response);
    } catch {
      refuse(404);
    }
  };
}
