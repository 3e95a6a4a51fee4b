// A bare client for the tests: sends exactly what it is told, as a hostile one would.
import { request, type IncomingHttpHeaders } from "node:http";
import { connect } from "node:net";

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

export interface Ask {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string | string[]>>;
  readonly body?: string | Buffer;
}

/** One request on a connection of its own; the path is sent as it is written. */
export function ask(url: string, path: string, { method = "GET", headers = {}, body }: Ask = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(url, { path, method, headers, agent: false }, (response) => {
      let text = "";
      response
        .setEncoding("utf8")
        .on("data", (chunk: string) => (text += chunk))
        .on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }))
        .on("error", reject);
    });
    sent.on("error", reject).end(body);
  });
}

/** Bytes on a bare connection, then whatever comes back until the server, or a status line and `enough`, ends it. */
export function shout(url: string, bytes: string, enough = 10_000): Promise<string> {
  const { hostname, port } = new URL(url);
  return new Promise((resolve) => {
    let heard = "";
    const socket = connect(Number(port), hostname, () => socket.write(bytes, "latin1"));
    const timer = setTimeout(() => socket.destroy(), enough);
    socket
      .setEncoding("latin1")
      .on("data", (chunk: string) => (heard += chunk))
      .on("error", () => undefined)
      .on("close", () => {
        clearTimeout(timer);
        resolve(heard);
      });
  });
}
