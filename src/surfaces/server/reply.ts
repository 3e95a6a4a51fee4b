// What every answer of the server carries, whatever it is about.
import type { ServerResponse } from "node:http";

export interface Reply {
  readonly status: number;
  readonly type: string;
  readonly body: string | Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

/** No script but our own files, no other host, no frame. The editor adds a style element at run time and needs the nonce. */
export function contentPolicy(nonce?: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self'${nonce === undefined ? "" : ` 'nonce-${nonce}'`}`,
    "img-src 'self' data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "form-action 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join("; ");
}

/** Sent with every answer; an answer may replace one of them. */
export const commonHeaders: Readonly<Record<string, string>> = {
  "content-security-policy": contentPolicy(),
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "cache-control": "no-store",
};

export function json(status: number, value: unknown, headers: Readonly<Record<string, string>> = {}): Reply {
  return { status, type: "application/json", body: JSON.stringify(value), headers };
}

/** For a person who sees it in the browser's window. */
export function plain(status: number, says: string, headers: Readonly<Record<string, string>> = {}): Reply {
  return { status, type: "text/plain; charset=utf-8", body: `${says}\n`, headers };
}

export function send(response: ServerResponse, { status, type, body, headers }: Reply): void {
  if (response.headersSent || response.destroyed) return;
  const length = String(Buffer.byteLength(body));
  // Who was refused may go on sending; nobody will read it.
  const end = status >= 400 && !response.req.complete ? { connection: "close" } : {};
  response.writeHead(status, { ...commonHeaders, "content-type": type, "content-length": length, ...headers, ...end });
  response.end(body);
}
