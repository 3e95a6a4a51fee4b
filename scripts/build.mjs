// Builds the page, the command line and the library into dist/. With --if-stale, only when a source changed since the last build.
import { existsSync, renameSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { built, root } from "./fresh.mjs";
import { forNode, forPage } from "./vite.mjs";

const parts = [
  { name: "web", says: "page", entry: "src/surfaces/web/index.html", config: (entry, out) => forPage(dirname(entry), out) },
  { name: "node", says: "command line", entry: "src/surfaces/cli/main.ts", config: (entry, out) => forNode({ cli: entry }, out) },
  { name: "lib", says: "library", entry: "src/index.ts", config: (entry, out) => forNode({ index: entry }, out) },
];

/** A part is built aside and moved into place when all are whole, so a running program never reads half a build. */
const aside = join(root, `dist/.making-${process.pid}`);

if (!process.argv.includes("--if-stale") || !built.isFresh()) await buildAll();

async function buildAll() {
  const started = performance.now();
  const sources = built.key(); // taken first: a file saved while the build runs makes it stale again
  process.stderr.write("Building ...\n");
  const { build } = await import("vite");
  try {
    for (const { name, says, entry, config } of parts) {
      if (existsSync(join(root, entry))) await build(config(join(root, entry), join(aside, name)));
      else process.stderr.write(`  without the ${says}: there is no ${entry}\n`);
    }
    for (const { name } of parts) {
      rmSync(join(root, "dist", name), { recursive: true, force: true });
      if (existsSync(join(aside, name))) renameSync(join(aside, name), join(root, "dist", name));
    }
    built.mark(sources);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
  process.stderr.write(`Built in ${((performance.now() - started) / 1000).toFixed(1)} s.\n`);
}
