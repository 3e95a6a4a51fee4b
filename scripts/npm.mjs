// Runs npm for the other scripts.
import { spawnSync } from "node:child_process";
import { basename } from "node:path";

/**
 * Runs npm in a folder with its words on stderr, since stdout may be read by a script; says whether it ended well.
 * npm tells the scripts it runs where it lies; a program started by hand looks on PATH.
 */
export function npm(folder, ...words) {
  const told = process.env.npm_execpath;
  const options = { cwd: folder, stdio: ["ignore", 2, 2] };
  if (told !== undefined && basename(told) === "npm-cli.js") return spawnSync(process.execPath, [told, ...words], options).status === 0;
  return spawnSync("npm", words, { ...options, shell: process.platform === "win32" }).status === 0;
}
