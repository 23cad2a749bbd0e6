/** The built kit over HTTP: files of one folder, compressed once, with headers that a page cannot set itself. */
import { existsSync, readFileSync, statSync } from "node:fs";
import type { IncomingMessage, ServerResponse } from "node:http";
import { extname, join, normalize, sep } from "node:path";
import { gzipSync } from "node:zlib";
import { messageOf } from "../sim/checked/message-of.ts";
import { replaced } from "../sim/checked/replaced.ts";
import { STAGE_DOOR } from "./stage-door.ts";

const TYPES: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".md": "text/markdown; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
};
const PACKED = new Set([".png", ".woff2"]);
/** A host as a browser names it: nothing that could end the policy it is written into. */
const HOST = /^[\w.-]+(:\d+)?$|^\[[\da-f:]+\](:\d+)?$/i;

const HEADERS = {
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "content-security-policy": "frame-ancestors 'self'",
  "cross-origin-opener-policy": "same-origin",
};

/** Kept for the hosts by which they were asked for. */
const MAX_PAGES = 200;

interface Page {
  readonly plain: Buffer;
  readonly packed: Buffer | null;
}

/** @param onFault hears why a file of the kit cannot be served; callers are not told */
export function serveSite(
  folder: string,
  onFault: (message: string) => void,
): (request: IncomingMessage, response: ServerResponse) => void {
  const files = new Map<string, Page>();
  const pages = new Map<string, Page>();
  const read = (path: string, host: string): Page | null => {
    const type = extname(path);
    const [kept, key] = type === ".html" ? [pages, `${path} ${host}`] : [files, path];
    const known = kept.get(key);
    if (known) return known;
    const file = join(folder, path);
    if (!existsSync(file) || !statSync(file).isFile()) return null;
    const bytes = readFileSync(file);
    const plain = type === ".html" ? Buffer.from(reachOwnHost(bytes.toString(), host, path)) : bytes;
    const page = { plain, packed: PACKED.has(type) ? null : gzipSync(plain) };
    kept.set(key, page);
    // Whoever asks by many names of this host must neither fill the memory nor keep its own name out.
    const [oldest] = pages.keys();
    if (pages.size > MAX_PAGES && oldest !== undefined) pages.delete(oldest);
    return page;
  };
  const readOrFault = (path: string, host: string): Page | "fault" | null => {
    try {
      return read(path, host);
    } catch (fault) {
      onFault(messageOf(fault));
      return "fault";
    }
  };
  return (request, response) => {
    const path = pathOf(request.url ?? "");
    const host = request.headers.host ?? "";
    const send = (status: number, headers: Record<string, string>, body: Buffer | string) =>
      response
        .writeHead(status, { ...HEADERS, ...headers })
        .end(request.method === "HEAD" ? undefined : body);
    if (request.method !== "GET" && request.method !== "HEAD")
      return void send(405, { allow: "GET, HEAD" }, "");
    if (path === null || !HOST.test(host)) return void send(400, {}, "");
    if (path === "stage.html") return void send(200, STAGE_DOOR.headers, STAGE_DOOR.page);
    const page = readOrFault(path, host);
    if (page === "fault") return void send(500, {}, "This file cannot be served now.");
    if (!page) return void send(404, {}, "");
    const packed = /\bgzip\b/.test(String(request.headers["accept-encoding"] ?? "")) && page.packed;
    return void send(
      200,
      {
        "content-type": TYPES[extname(path)] ?? "application/octet-stream",
        // Names of built files carry their version; a page must be asked for each time.
        "cache-control": path.startsWith("assets/") ? "public, max-age=31536000, immutable" : "no-cache",
        vary: "accept-encoding",
        ...(packed ? { "content-encoding": "gzip" } : {}),
      },
      packed || page.plain,
    );
  };
}

/** Short addresses for people to type, and the file behind each; null for what leads outside. */
function pathOf(url: string): string | null {
  try {
    const path = normalize(decodeURIComponent(new URL(url, "http://any").pathname)).replace(/^[/\\]+/, "");
    if (path.includes("\0") || path.split(sep).includes("..")) return null;
    if (path === "" || path.endsWith("/")) return `${path}index.html`;
    return path === "phone" || path === "stage" ? `${path}.html` : path;
  } catch {
    return null;
  }
}

/** Some browsers do not count a socket of the page's own host as 'self': it is named. */
const reachOwnHost = (html: string, host: string, page: string): string =>
  replaced(html, "connect-src 'self'", `connect-src 'self' ws://${host} wss://${host}`, page);
