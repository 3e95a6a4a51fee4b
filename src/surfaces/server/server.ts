// The desk's server: on this computer only, for one browser, between the workbench and the shop folder.
import { once } from "node:events";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import { realpath } from "node:fs/promises";
import { watchShop } from "../../files/watch.ts";
import { pageOf, type Asset } from "./assets.ts";
import { newDoor } from "./guard.ts";
import { commonHeaders, plain, send } from "./reply.ts";
import { answer, type Desk } from "./routes.ts";

export { loadWeb, noncePlaceholder, type Asset } from "./assets.ts";
export { tokenHeader } from "./guard.ts";

export interface Serving {
  readonly url: string;
  /** Opens the workbench once; carries a secret, so it is shown to the person and written nowhere. */
  readonly startLink: string;
  close(): Promise<void>;
}

const loopback = "127.0.0.1";
/** A request comes from the same computer: what takes longer than this is stuck or means harm. */
const patience = { headersTimeout: 5_000, requestTimeout: 20_000, connectionsCheckingInterval: 1_000 }; // ms
const heartbeat = 15_000; // ms
/** How long a save under way may take when the program is told to end. */
const grace = 2_000; // ms

/** Serves the shop in `root` with the built page `web`; port 0 takes a free one. Rejects when the port is taken. */
export async function startServer(options: {
  readonly root: string;
  readonly web: ReadonlyMap<string, Asset>;
  readonly port?: number;
}): Promise<Serving> {
  const root = await realpath(options.root);
  const page = pageOf(options.web);
  const listeners = new Set<ServerResponse>();
  const tell = (text: string): void => listeners.forEach((response) => response.write(text));
  const watch = await watchShop(root, (changed) => tell(`data: ${JSON.stringify({ changed })}\n\n`), report);
  const server = createServer(patience);
  try {
    server.listen({ host: loopback, port: options.port ?? 0, exclusive: true });
    await once(server, "listening");
  } catch (error) {
    await watch.close();
    throw error;
  }
  const address = server.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  const door = newDoor(port);
  const desk: Desk = { root, door, page, listen };

  const respond = (waits: boolean) => (request: IncomingMessage, response: ServerResponse) => {
    answer(desk, { request, response, waits }).then(
      (reply) => reply !== null && send(response, reply),
      (error: unknown) => {
        if (request.socket.destroyed) return; // the browser went away in the middle
        report(error);
        send(response, plain(500, "The program made a mistake here. Nothing was changed."));
      },
    );
  };
  server.on("request", respond(false)).on("checkContinue", respond(true)).on("error", report);

  function listen(response: ServerResponse): void {
    response.writeHead(200, { ...commonHeaders, "content-type": "text/event-stream" });
    response.write("retry: 1000\n\n");
    listeners.add(response);
    response.on("close", () => listeners.delete(response));
  }
  const beat = setInterval(() => tell(": still here\n\n"), heartbeat).unref();

  return {
    url: `http://${loopback}:${port}/`,
    startLink: `http://${loopback}:${port}/?start=${door.start}`,
    async close() {
      clearInterval(beat);
      listeners.forEach((response) => response.end());
      const closed = once(server, "close");
      server.close();
      const cut = setTimeout(() => server.closeAllConnections(), grace);
      await Promise.all([closed, watch.close()]);
      clearTimeout(cut);
    },
  };
}

/** A fault of the program or the system: its name and message, never what the request held. */
function report(error: unknown): void {
  console.error(`waywright: ${error instanceof Error ? `${error.name}: ${error.message}` : String(error)}`);
}
