// The child of the kill test: saves random texts until it is killed. Arguments: module with saveText, shop folder, seed.
import { createHash } from "node:crypto";
import { readFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [module, root, seed] = process.argv.slice(2);
const { saveText } = await import(pathToFileURL(module).href);

const paths = ["shop.yaml", "catalogue/parts.yaml", "lathe/machine.yaml", "lathe/options/more-air.yaml", "mill/machine.yaml"];
const readings = "lathe/records/readings.csv";
const digest = (text) => createHash("sha256").update(text).digest("hex");
const tell = (word, path, text) => writeSync(1, `${word} ${path} ${digest(text)}\n`);
const disk = (path) => readFileSync(join(root, path), "utf8");

for (let n = 0; ; n++) {
  const draw = random(Number(seed) * 65_536 + n);
  const kind = draw();
  if (kind < 0.2) await save(`lathe/records/run-${seed}-${n}.yaml`, body(draw).slice(0, 500), null);
  else if (kind < 0.4) await save(readings, disk(readings) + `${seed},${n}\n`, digest(disk(readings)));
  else {
    const path = paths[Math.floor(draw() * paths.length)];
    await save(path, body(draw), digest(disk(path)));
  }
}

async function save(path, text, expected) {
  tell("try", path, text);
  const saved = await saveText(root, path, text, expected);
  if (!saved.ok) {
    tell("refused", path, JSON.stringify(saved));
    process.exit(1);
  }
  tell("done", path, text);
}

/** From a few bytes to some hundred kB, so that many writes take several pages. */
function body(draw) {
  const lines = Math.floor(10 ** (1 + 3.5 * draw()));
  return `# ${draw()}\n`.repeat(lines);
}

/** Mulberry32. */
function random(state) {
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
