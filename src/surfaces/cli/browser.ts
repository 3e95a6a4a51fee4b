// The browser of this computer, asked to show an address; when there is none, nothing happens.
import { spawn } from "node:child_process";

/** The program that shows an address, or null where nobody would see it. */
export function browserCommand(platform: string, env: Readonly<Record<string, string | undefined>>): readonly [string, ...string[]] | null {
  if (platform === "darwin") return ["open"];
  if (platform === "win32") return ["cmd", "/c", "start", ""];
  return env["DISPLAY"] || env["WAYLAND_DISPLAY"] ? ["xdg-open"] : null;
}

/** Tells whether there was somebody to ask; whether a window came up nobody can say. */
export function showInBrowser(address: string): boolean {
  const command = browserCommand(process.platform, process.env);
  if (command === null) return false;
  const [program, ...words] = command;
  const child = spawn(program, [...words, address], { detached: true, stdio: "ignore" });
  child.on("error", () => undefined); // the address stands on the terminal too
  child.unref();
  return true;
}
