// The command as a user starts it, from nothing, against a bare start of Node.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import type { Pair } from "./pair.ts";

// Bundled to a folder of node_modules, two below the root; the command line that was built before the benches ran.
const root = join(import.meta.dirname, "../..");
const program = join(root, "dist/node/cli.mjs");

/** Starts Node and waits for its end; nothing is printed. */
function started(words: readonly string[], statuses: readonly number[]): void {
  const { status, stderr } = spawnSync(process.execPath, words, { stdio: ["ignore", "ignore", "pipe"], encoding: "utf8" });
  if (status === null || !statuses.includes(status)) throw new Error(`${words.join(" ")} ended with ${String(status)}: ${stderr}`);
}
const bare = (): void => started(["-e", "0"], [0]);

export const benches: readonly Pair[] = [
  {
    says: "check --quick of the example, against node -e 0 (bar 700 ms)",
    base: bare,
    subject: () => started([program, "check", join(root, "examples/heron"), "--quick"], [0, 1]),
  },
  {
    says: "check of the example with simulations and remedies, against node -e 0",
    base: bare,
    subject: () => started([program, "check", join(root, "examples/heron")], [0, 1]),
  },
  { says: "--version, against node -e 0", base: bare, subject: () => started([program, "--version"], [0]) },
];
