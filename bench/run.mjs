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
const config = forNode({ ...Object.fromEntries(entries), pair: join(import.meta.dirname, "pair.ts") }, out);
// The driver of the browser finds files of its own beside it.
await build({ ...config, ssr: { ...config.ssr, external: ["playwright-core"] } });
const load = (name) => import(pathToFileURL(join(out, `${name}.mjs`)).href);

const { ratioOf, timedRatioOf } = await load("pair");
const figure = (value) => String(Number(value.toPrecision(3)));
console.log("median ratio [lower to upper quartile]: time of one call of the subject, of the base");
for (const name of names) {
  const { benches = [], timed } = await load(name);
  for (const bench of benches) tell(name, bench, ratioOf(bench));
  // What needs something running beside it is given that, and takes it down again.
  await timed?.(
    async (bench) => tell(name, bench, await timedRatioOf(bench)),
    (why) => console.log(`${name}: left out: ${why}`),
  );
}

function tell(name, { says }, { lower, median, upper, baseTime, subjectTime }) {
  const ratio = `${figure(median)} [${figure(lower)} to ${figure(upper)}]`;
  console.log(`${name}: ${says}\n  ${ratio}: ${figure(subjectTime * 1e3)} ms, ${figure(baseTime * 1e3)} ms`);
}
