// Makes node_modules match the lock file, and with --browser finds or fetches a browser for the tests. Needs Node and npm only.
import { nodeTooOld } from "../bin/node-version.mjs";
import { packages, root } from "./fresh.mjs";
import { npm } from "./npm.mjs";

const tooOld = nodeTooOld();
if (tooOld !== null) stop(tooOld);

if (!packages.isFresh()) {
  process.stderr.write("Installing the packages of the lock file (npm ci) ...\n");
  // The build needs the development packages whatever NODE_ENV or npm's own settings say.
  if (!npm(root, "ci", "--include=dev", "--loglevel=error")) stop("npm ci failed: its own message stands above.");
  packages.mark();
}

if (process.argv.includes("--browser")) await import("./browser.mjs");

function stop(sentence) {
  process.stderr.write(`${sentence}\n`);
  process.exit(1);
}
