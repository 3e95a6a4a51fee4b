// Runs every bench/*.bench.ts, or those whose file name contains the word given, bundled as users run the code. Prints ratios, judges none.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";
import { root } from "../scripts/fresh.mjs";
import { forNode } from "../scripts/vite.mjs";

const ending = ".bench.ts";
const word = process.argv[2] ?? "";
const names = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith(ending) && file.includes(word))
  .map((file) => file.slice(0, -ending.length))
  .sort();
if (names.length === 0) {
  console.error(`no bench has "${word}" in its name`);
  process.exit(1);
}

const out = join(root, "node_modules/.waywright-bench");
const entries = names.map((name) => [name, join(import.meta.dirname, name + ending)]);
await build(forNode({ ...Object.fromEntries(entries), pair: join(import.meta.dirname, "pair.ts") }, out));
const load = (name) => import(pathToFileURL(join(out, `${name}.mjs`)).href);

const { ratioOf } = await load("pair");
const figure = (value) => value.toPrecision(4);
console.log("median ratio [lower to upper quartile], time of one call of the base");
for (const name of names) {
  const { benches } = await load(name);
  for (const bench of benches) {
    const { lower, median, upper, baseTime } = ratioOf(bench);
    console.log(`${name}: ${bench.says}\n  ${figure(median)} [${figure(lower)} to ${figure(upper)}], ${figure(baseTime * 1e6)} us`);
  }
}
