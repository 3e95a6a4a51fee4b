#!/usr/bin/env node
// Starts the built command line; in a clone it first installs and builds whatever is missing or stale.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { nodeTooOld } from "./node-version.mjs";

/** Neither an unusable Node nor a failed set-up says anything about a machine, so neither may end as "a check fails" (status 1). */
const cannotStart = 2;

const program = new URL("../dist/node/cli.mjs", import.meta.url);
const isClone = existsSync(new URL("../src", import.meta.url)); // an installed package carries no sources

const obstacle = nodeTooOld() ?? (isClone ? await bringUpToDate() : null);
if (obstacle === null) await import(program.href);
else {
  process.stderr.write(`${obstacle}\n`);
  process.exitCode = cannotStart;
}

async function bringUpToDate() {
  const { packages, built } = await import("../scripts/fresh.mjs");
  if (!packages.isFresh() && !run("setup.mjs")) return "Waywright cannot start: its packages are not installed.";
  if (!built.isFresh() && !run("build.mjs")) return "Waywright cannot start: it was not built.";
  return existsSync(program) ? null : "Waywright cannot start: the build has no command line.";
}

function run(script) {
  const path = fileURLToPath(new URL(`../scripts/${script}`, import.meta.url));
  return spawnSync(process.execPath, [path], { stdio: ["ignore", 2, 2] }).status === 0;
}
