// waywright open: prints the checks, serves the workbench to this computer and shows it in a browser, until it is stopped.
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { waywright } from "../../rooms/index.ts";
import { loadWeb, startServer } from "../server/server.ts";
import { type Given, wholeNumber } from "./arguments.ts";
import { showInBrowser } from "./browser.ts";
import { cautionsOf } from "./cautions.ts";
import { checkDesk, type Status } from "./checked.ts";
import { checkPage } from "./check-text.ts";
import { openDesk } from "./desk.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { print, type Terminal } from "./terminal.ts";

/** The built page lies beside the built command line. */
const web = join(dirname(fileURLToPath(import.meta.url)), "..", "web");
const highestPort = 65535;

export async function open(given: Given, t: Terminal, cwd: string): Promise<Status> {
  const text = given.value("port");
  const port = text === undefined ? 0 : wholeNumber("--port", text, 0, highestPort);
  const desk = openDesk(given, cwd);
  if (!existsSync(join(web, "index.html")))
    throw new Misuse("page-missing", `the page of the workbench is not built (no ${join(web, "index.html")}); npm run build makes it`);
  if (!given.has("json")) print(t, checkPage(t, checkDesk(desk, { figures: false, cures: false }), cautionsOf(waywright)));
  const serving = await startServer({ root: desk.root, web: await loadWeb(web), port }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "EADDRINUSE") throw new Misuse("port-taken", `port ${port} is taken; leave --port out for a free one`);
    if (error.code === "EACCES") throw new Misuse("port-taken", `port ${port} may not be used; leave --port out for a free one`);
    throw error;
  });
  const stopped = new Promise<void>((done) => {
    process.once("SIGINT", done);
    process.once("SIGTERM", done);
  });
  if (given.has("json")) t.out(json({ startLink: serving.startLink, url: serving.url }));
  else t.out(`\nWorkbench: ${serving.startLink}\n`);
  if (!given.has("no-browser")) showInBrowser(serving.startLink);
  if (!given.has("json")) t.out("Ctrl-C ends it.\n");
  await stopped;
  await serving.close();
  return 0;
}
