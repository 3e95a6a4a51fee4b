// Whether this Node is new enough: asked by every entry, before anything newer than Node 14 is used.
import { readFileSync } from "node:fs";

/** A sentence when this Node is older than package.json's `engines.node` (written ">=major.minor"), or null. */
export function nodeTooOld(running = process.versions.node) {
  const { engines } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8"));
  const [needsMajor, needsMinor] = engines.node.replace(">=", "").split(".").map(Number);
  const [major, minor] = running.split(".").map(Number);
  if (major > needsMajor || (major === needsMajor && minor >= needsMinor)) return null;
  return `Waywright needs Node ${needsMajor}.${needsMinor} or newer; this is Node ${running}.`;
}
