// What is up to date in a clone: the installed packages against the lock file, the built files against the sources.
// Asked at every start from a clone, so it uses Node's own modules only and reads no source text.
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("..", import.meta.url));

const digest = (parts) => createHash("sha256").update(parts.join("\n")).digest("hex");

/** Packages and built files each stand for one key; the key they were made for lies in a stamp beside them. */
function stamped(file, key) {
  const path = join(root, file);
  return {
    isFresh() {
      try {
        return readFileSync(path, "utf8") === key();
      } catch {
        return false; // no stamp: never made, or thrown away
      }
    },
    mark(made = key()) {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, made);
    },
    key,
  };
}

/** Packages are native in part, so they hold for one lock file, one Node and one platform. */
export const packages = stamped("node_modules/.waywright-packages", () =>
  digest([readFileSync(join(root, "package-lock.json"), "utf8"), process.version, process.platform, process.arch]),
);

/** Built files hold for one state of everything the build reads; size and time of a file stand for its text. */
export const built = stamped("dist/.sources", () => digest(["src", "scripts", "package.json", "package-lock.json"].flatMap(states)));

/** A test beside the code is no part of a build: saving one rebuilds nothing. */
const isTest = (name) => /\.test\.tsx?$/.test(name);

function states(path) {
  const state = statSync(join(root, path), { throwIfNoEntry: false });
  if (state === undefined) return [];
  if (!state.isDirectory()) return [`${path} ${state.size} ${state.mtimeMs}`];
  const names = readdirSync(join(root, path)).filter((name) => !isTest(name));
  return names.sort().flatMap((name) => states(`${path}/${name}`));
}
