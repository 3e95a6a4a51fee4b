// Who may talk to the server: the page it served itself, in the browser that opened the start link, and nobody else.
import { randomBytes, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";

/** What one start of the server knows; nothing of it outlives the program or reaches a log. */
export interface Door {
  /** Names under which a browser may know this server, port included; anything else is another site's name for our address. */
  readonly hosts: ReadonlySet<string>;
  readonly cookieName: string;
  readonly cookie: string;
  /** Sent back by the page with every change: another page on this computer shares our cookie, but cannot read this. */
  readonly token: string;
  /** Null once used. */
  start: string | null;
}

export interface Refusal {
  readonly status: number;
  readonly says: string;
}

export const tokenHeader = "x-waywright-token";

const secret = (): string => randomBytes(32).toString("base64url");

export function newDoor(port: number): Door {
  return {
    hosts: new Set([`127.0.0.1:${port}`, `localhost:${port}`]),
    cookieName: `waywright-${port}`, // browsers do not part cookies by port
    cookie: secret(),
    token: secret(),
    start: secret(),
  };
}

/** Null for a request that our own page, or the person at the browser, can have made. */
export function refuseForeign(request: IncomingMessage, door: Door): Refusal | null {
  const [host = "", ...otherHosts] = request.headersDistinct["host"] ?? [];
  if (otherHosts.length > 0 || !door.hosts.has(host)) return { status: 421, says: "this server does not go by that name" };
  const origins = request.headersDistinct["origin"] ?? [];
  if (origins.some((origin) => origin !== `http://${host}`)) return { status: 403, says: "asked by another site" };
  // Another port of this computer is the same site in a browser's eyes, so "same-site" is foreign as well.
  const sites = request.headersDistinct["sec-fetch-site"] ?? [];
  if (sites.some((site) => site !== "same-origin" && site !== "none")) return { status: 403, says: "asked by another site" };
  return null;
}

export function hasCookie(request: IncomingMessage, door: Door): boolean {
  // Another server on this computer may have set a cookie of the same name: one right value among them is enough.
  return (request.headers.cookie ?? "").split(";").some((pair) => {
    const [name = "", value = ""] = pair.trim().split("=", 2);
    return name === door.cookieName && isSame(value, door.cookie);
  });
}

/** True once, for the token of the start link. */
export function spendStart(token: string, door: Door): boolean {
  if (door.start === null || !isSame(token, door.start)) return false;
  door.start = null;
  return true;
}

/** Null for a request that may change something. */
export function refuseChange(request: IncomingMessage, door: Door): Refusal | null {
  const token = request.headers[tokenHeader];
  if (typeof token !== "string" || !isSame(token, door.token))
    return { status: 403, says: "the page is older than this server; load it again" };
  const type = (request.headers["content-type"] ?? "").split(";", 1)[0]?.trim().toLowerCase();
  return type === "application/json" ? null : { status: 415, says: "send application/json" };
}

/** Takes as long for a near miss as for a far one. */
function isSame(given: string, right: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(right)];
  return a.length === b.length && timingSafeEqual(a, b);
}

/** The decoded path and the query of a request line; null when it tries to be anything but a plain path. */
export function targetOf(url: string): { readonly path: string; readonly query: URLSearchParams } | null {
  const [, raw = "", query = ""] = /^([^?]*)\??(.*)$/s.exec(url) ?? [];
  try {
    const path = decodeURIComponent(raw);
    const isPlain = path.startsWith("/") && !/[\p{Cc}\\%]/u.test(path) && !/\/(\.{0,2})\//.test(path) && !/\/\.{1,2}$/.test(path);
    return isPlain ? { path, query: new URLSearchParams(query) } : null;
  } catch {
    return null;
  }
}
