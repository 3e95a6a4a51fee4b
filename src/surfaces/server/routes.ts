// What the server answers: the page, the shop's files as text with hash, saves, and word of changes. It computes nothing.
import type { IncomingMessage, ServerResponse } from "node:http";
import { basename } from "node:path";
import { saveText, type Saved } from "../../files/save.ts";
import { readShop } from "../../files/shop-folder.ts";
import { isShopPath } from "../../files/shop-path.ts";
import { readShopFile } from "../../files/text-file.ts";
import { hasCookie, refuseChange, refuseForeign, spendStart, targetOf, type Door, type Refusal } from "./guard.ts";
import { json, plain, type Reply } from "./reply.ts";

/** What the routes need of the running server. */
export interface Desk {
  readonly root: string;
  readonly door: Door;
  /** The page and its assets by path. */
  readonly page: (path: string, takesGzip: boolean) => Reply | null;
  /** Keeps a response open for word of changes. */
  readonly listen: (response: ServerResponse) => void;
}

export interface Visit {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  /** The client waits for a word before it sends its body. */
  readonly waits: boolean;
}

type Route = (desk: Desk, visit: Visit, query: URLSearchParams) => Promise<Reply | null> | Reply | null;

const routes = new Map<string, { readonly GET?: Route; readonly POST?: Route }>([
  ["/api/session", { GET: (desk) => json(200, { token: desk.door.token }) }],
  ["/api/shop", { GET: shop }],
  ["/api/file", { GET: file }],
  ["/api/save", { POST: save }],
  ["/api/events", { GET: events }],
]);

/** The answer to a request; null when the request is kept open. */
export async function answer(desk: Desk, visit: Visit): Promise<Reply | null> {
  const { request } = visit;
  const { door } = desk;
  const foreign = refuseForeign(request, door);
  if (foreign !== null) return refusal(foreign);
  const target = targetOf(request.url ?? "");
  if (target === null) return plain(400, "This is not an address of the workbench.");
  const { path, query } = target;

  const isKnown = hasCookie(request, door);
  const start = path === "/" && request.method === "GET" ? query.get("start") : null;
  if (start !== null && isKnown) return plain(303, "Go on.", { location: "/" });
  if (start !== null && spendStart(start, door)) {
    const cookie = `${door.cookieName}=${door.cookie}; Path=/; HttpOnly; SameSite=Strict`;
    return plain(303, "Go on.", { location: "/", "set-cookie": cookie });
  }
  if (!isKnown) return plain(401, "Open the link that the program printed. It works once; start the program again for a new one.");

  const method = request.method === "HEAD" ? "GET" : request.method;
  const route = routes.get(path);
  if (route !== undefined) {
    if (method === "GET" && route.GET !== undefined) return route.GET(desk, visit, query);
    if (method === "POST" && route.POST !== undefined) return route.POST(desk, visit, query);
    return plain(405, "Not that way.", { allow: Object.keys(route).join(", ") });
  }
  if (method !== "GET") return plain(405, "Not that way.", { allow: "GET" });
  const takesGzip = /\bgzip\b(?!\s*;\s*q=0)/.test(String(request.headers["accept-encoding"] ?? ""));
  return desk.page(path, takesGzip) ?? plain(404, "There is no such thing here.");
}

function shop({ root }: Desk): Reply {
  const { files, findings } = readShop(root);
  return json(200, { name: basename(root), files: Array.from(files, ([path, { text, hash }]) => ({ path, text, hash })), findings });
}

function file({ root }: Desk, _: Visit, query: URLSearchParams): Reply {
  const path = query.get("path") ?? "";
  if (!isShopPath(path)) return json(404, { says: "no file of a shop" });
  const read = readShopFile(root, path);
  if (!("code" in read)) return json(200, { path, ...read });
  return json(read.code === "file-missing" ? 404 : 422, { says: read.says, finding: read });
}

function events({ listen }: Desk, { request, response }: Visit): null | Reply {
  if (request.method === "HEAD") return { status: 200, type: "text/event-stream", body: "" };
  listen(response);
  return null;
}

async function save({ root, door }: Desk, visit: Visit): Promise<Reply> {
  const refused = refuseChange(visit.request, door);
  if (refused !== null) return json(refused.status, { says: refused.says });
  const body = await readBody(visit);
  if ("status" in body) return json(body.status, { says: body.says });
  const wanted = asSave(body.text);
  if (wanted === null) return json(400, { says: "wanted: { path, text, hash }, hash null for a new file" });
  const saved = await saveText(root, wanted.path, wanted.text, wanted.hash);
  if (saved.ok) return json(200, saved);
  return saved.reason === "conflict"
    ? json(409, { conflict: saved.conflict })
    : json(statusOf[saved.reason], { reason: saved.reason, says: saved.says });
}

type NotSaved = Exclude<Saved, { ok: true } | { reason: "conflict" }>["reason"];

const statusOf: Readonly<Record<NotSaved, number>> = {
  "not-a-shop-path": 400,
  "link-out": 400,
  "not-text": 422,
  "too-large": 413,
  "append-only": 422,
  disk: 507,
};

/** Far above any file a person writes, and little enough to hold in memory. */
const bodyLimit = 2_000_000;

async function readBody({ request, response, waits }: Visit): Promise<{ text: string } | Refusal> {
  const tooLarge = { status: 413, says: `larger than ${bodyLimit / 1e6} MB` };
  if (Number(request.headers["content-length"] ?? 0) > bodyLimit) return tooLarge;
  if (waits) response.writeContinue();
  const chunks: Buffer[] = [];
  let length = 0;
  // A length that was not said can only be counted; the connection must outlive the count to carry the answer.
  for await (const chunk of request.iterator({ destroyOnReturn: false })) {
    const bytes = Buffer.from(chunk);
    length += bytes.length;
    if (length > bodyLimit) return tooLarge;
    chunks.push(bytes);
  }
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(Buffer.concat(chunks)) };
  } catch {
    return { status: 400, says: "not UTF-8" };
  }
}

/** Exactly the three keys, each its own; anything else is not from our page. */
function asSave(body: string): { path: string; text: string; hash: string | null } | null {
  try {
    const given: unknown = JSON.parse(body);
    if (typeof given !== "object" || given === null || Object.keys(given).sort().join() !== "hash,path,text") return null;
    if (!("path" in given && "text" in given && "hash" in given)) return null;
    const { path, text, hash } = given;
    const isHash = hash === null || (typeof hash === "string" && /^[0-9a-f]{64}$/.test(hash));
    return typeof path === "string" && typeof text === "string" && isHash ? { path, text, hash } : null;
  } catch {
    return null;
  }
}

function refusal({ status, says }: Refusal): Reply {
  return plain(status, `Refused: ${says}.`);
}
