// The built page in memory: a request is looked up in this list and never turned into a path on disk.
import { randomBytes } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { extname, join, relative, sep } from "node:path";
import { gzipSync } from "node:zlib";
import { contentPolicy, type Reply } from "./reply.ts";

export interface Asset {
  readonly type: string;
  readonly body: Buffer;
}

/** Stands in index.html wherever a nonce belongs; filled anew for every response. */
export const noncePlaceholder = "__CSP_NONCE__";

const types = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
  [".json", "application/json"],
  [".svg", "image/svg+xml"],
  [".png", "image/png"],
  [".ico", "image/x-icon"],
  [".woff2", "font/woff2"],
  [".txt", "text/plain; charset=utf-8"],
]);

/** Every file of a built page by its URL path; kinds that a page does not load are left out. */
export async function loadWeb(folder: string): Promise<Map<string, Asset>> {
  const web = new Map<string, Asset>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    const type = types.get(extname(entry.name));
    if (!entry.isFile() || type === undefined) continue;
    const path = join(entry.parentPath, entry.name);
    web.set(`/${relative(folder, path).split(sep).join("/")}`, { type, body: await readFile(path) });
  }
  return web;
}

/** Answers for the page: an asset by its exact path, the page itself for any place in it, null for what there is not. */
export function pageOf(web: ReadonlyMap<string, Asset>): (path: string, takesGzip: boolean) => Reply | null {
  const index = web.get("/index.html");
  if (index === undefined) throw new Error("the page has no index.html: it has not been built");
  const html = index.body.toString("utf8");
  const packed = new Map<string, Buffer>();

  return (path, takesGzip) => {
    const asset = path === "/index.html" ? undefined : web.get(path);
    if (asset === undefined) return isPlaceInPage(path) ? page() : null;
    const { type, body } = asset;
    const headers = { "cache-control": isHashed(path) ? "private, max-age=31536000, immutable" : "no-cache", vary: "accept-encoding" };
    if (!takesGzip || !isPackable(asset)) return { status: 200, type, body, headers };
    const small = packed.get(path) ?? gzipSync(body);
    packed.set(path, small);
    return { status: 200, type, body: small, headers: { ...headers, "content-encoding": "gzip" } };
  };

  function page(): Reply {
    const nonce = randomBytes(16).toString("base64");
    return {
      status: 200,
      type: index?.type ?? "",
      body: html.replaceAll(noncePlaceholder, nonce),
      headers: { "content-security-policy": contentPolicy(nonce) },
    };
  }
}

/** Addresses of figures hold dots (`lathe/air.hold-time`), so only the endings of files are told apart from places. */
function isPlaceInPage(path: string): boolean {
  const isFile = types.has(extname(path)) || [".yaml", ".csv", ".map"].includes(extname(path));
  return path === "/index.html" || !(isFile || path.startsWith("/assets/") || path.startsWith("/api/") || path.includes("/."));
}

/** The build puts a hash of eight characters before the ending: another content has another name. */
function isHashed(path: string): boolean {
  return /^\/assets\/.*-[\w-]{8}\.\w+$/.test(path);
}

/** Pictures and fonts are packed already, and below a packet there is nothing to gain. */
function isPackable({ type, body }: Asset): boolean {
  return body.length > 1400 && /^text|json|svg/.test(type);
}
