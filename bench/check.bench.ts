// The whole check of the example shop, 1,000 samples and estimates for simulations, against bare loops that fill as many columns.
import { join } from "node:path";
import { readShop } from "../src/files/shop-folder.ts";
import { isColumn } from "../src/kernel/band.ts";
import { cone } from "../src/kernel/graph.ts";
import { asFound, type Variant } from "../src/kernel/model/node.ts";
import { parseShop } from "../src/kernel/model/shop.ts";
import { SAMPLES } from "../src/kernel/random.ts";
import { study, type Study } from "../src/kernel/study.ts";
import { waywright } from "../src/rooms/index.ts";
import type { Pair } from "./pair.ts";

// Bundled to a folder of node_modules, two below the root.
const root = join(import.meta.dirname, "../..");
const { files } = readShop(join(root, "examples/heron"));
const shop = parseShop(files, waywright.keys);
const first = study(waywright, shop, asFound, "quick", undefined, false);

/** Everything the checks are made of, and how many columns of it are long. */
const asked = cone(...first.graph.checks.flatMap((c) => [c.demand, c.capacity]));
const long = asked.filter((cell) => {
  const f = first.evaluation.filled.get(cell);
  return f && isColumn(f) && f.v.length === SAMPLES;
}).length;
const given = Array.from({ length: 8 }, (_, i) => Float64Array.from({ length: SAMPLES }, (_v, k) => 1 + ((7 * k + i) % 997) / 997));

/** As many columns by hand, each by the same short formula over four others. */
function byHand(): Float64Array[] {
  return Array.from({ length: long }, (_, j) => {
    const [a, b, c, d] = [0, 1, 3, 6].map((i) => given[(i + j) % given.length]);
    const v = new Float64Array(SAMPLES);
    if (a && b && c && d) for (let k = 0; k < SAMPLES; k++) v[k] = ((a[k] ?? 0) * (b[k] ?? 0)) / ((c[k] ?? 0) + (d[k] ?? 0));
    return v;
  });
}

/** A field under way: every turn a value that stood never before, each evaluation lending its columns to the next. */
function edited(root_: string, path: string, text: (turn: number) => string, mode: "quick" | "nominal"): () => Study {
  let turn = 0;
  let last = study(waywright, shop, asFound, mode, undefined, false);
  return () => {
    turn += 1;
    const variant: Variant = { options: [], tries: [{ root: root_, path, text: text(turn) }] };
    last = study(waywright, shop, variant, mode, last, false);
    const wrong = last.model.findings.find((f) => f.place.file === "tried");
    if (wrong) throw new Error(`the edit is none: ${wrong.says}`);
    return last;
  };
}
const feed = (mode: "quick" | "nominal") =>
  edited("lathe", "work/drag-knob.operations.rough.feed", (turn) => `${(0.2 + (turn % 1000) / 1e4).toFixed(4)} mm`, mode);
const volts = edited("shop", "supply.voltage", (turn) => `${(230 + (turn % 1000) / 100).toFixed(2)} V +/- 5 %`, "quick");
const power = edited("lathe", "spindle.motor.plate.power", (turn) => `${(5 + (turn % 1000) / 1e4).toFixed(4)} hp`, "quick");

export const benches: readonly Pair[] = [
  {
    says: `all checks of ${first.graph.cells.size} quantities anew, ${long} columns, against as many bare loops (bar 250 ms)`,
    base: byHand,
    subject: () => study(waywright, shop, asFound, "quick", undefined, false),
  },
  { says: "after one edit: the feed of one cut (bar 50 ms)", base: byHand, subject: feed("quick") },
  { says: "after one edit: the voltage of the house, which all cuts hang on", base: byHand, subject: volts },
  { says: "after one edit: the plate of a motor, whose circuits are drawn again", base: byHand, subject: power },
  { says: "after one edit: the feed of one cut, nominal case alone", base: byHand, subject: feed("nominal") },
];
