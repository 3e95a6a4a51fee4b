// One suite over every declared sign: a need that is said to raise a figure raises it, one that is said to lower it lowers it.
import { expect, test } from "vitest";
import type { AnyRef, Figure, Ref, Simulated } from "../../src/kernel/figure.ts";
import { evaluate, type Evaluation } from "../../src/kernel/evaluate.ts";
import { build, type Cell, type FigureCell, isMissing } from "../../src/kernel/graph.ts";
import type { Json } from "../../src/kernel/job.ts";
import { asFound } from "../../src/kernel/model/node.ts";
import { parseShop } from "../../src/kernel/model/shop.ts";
import { resolve } from "../../src/kernel/model/resolve.ts";
import { uniforms } from "../../src/kernel/random.ts";
import { waywright } from "../../src/rooms/index.ts";
import { example } from "./house.ts";

type Signed = Figure | Simulated;
const signed = waywright.rooms
  .flatMap((r) => r.figures)
  .filter((f): f is Signed => (f.decl === "figure" || f.decl === "simulated") && f.signs !== undefined);

/** What the example has not: three phases with unequal voltages, a chuck, a dc and a servo spindle. */
const more = {
  "shop.yaml": `waywright: 1
shop: bench
supply: { kind: three-phase-star, voltage: 400 V +/- 5 %, rating: 63 A, existing: 2 A, line-voltages: [ 400 V, 396 V, 408 V ] }
air:
  compressors:
    main:
      motor: { kind: induction, plate: { power: 1.5 kW, voltage: 230/400 V, current: 6.1/3.5 A, frequency: 50 Hz, speed: 1420 rpm }, connected: star,
        leads: 6, inertia: 0.01 kg*m2 }
`,
  "lathe/machine.yaml": `machine: a lathe with a chuck
kind: bar-lathe
spindle:
  motor: { kind: induction, plate: { power: 2.2 kW, voltage: 230/400 V, current: 8.6/5.0 A, frequency: 50 Hz, speed: 1430 rpm }, leads: 6, connected: star,
    highest-speed: 3600 rpm }
  drive: { rated-current: 11 A, input-phases: 3, bus: { bleed: 20 to 60 kohm }, resistor: { resistance: 60 to 90 ohm } }
  belts: { only: { motor-pulley: 100 mm, spindle-pulley: 120 mm, centre: 400 mm, tension: sprung } }
  highest-speed: 2400 rpm
  workholding: { kind: chuck, grips: unknown, force: 15 to 25 kN, jaws: 3, jaw-mass: 0.4 to 0.6 kg, jaw-radius: 40 to 60 mm }
`,
  "dc/machine.yaml": `machine: a dc lathe
kind: bar-lathe
spindle:
  motor: { kind: dc, plate: { power: 3 kW, speed: 1750 rpm }, armature: { voltage: 180 V, current: 20 A, resistance: 0.4 to 0.6 ohm },
    highest-speed: 3000 rpm }
  drive: { rated-current: 25 A }
  belts: { only: { motor-pulley: 100 mm, spindle-pulley: 100 mm, centre: 400 mm } }
  highest-speed: 2000 rpm
`,
  "servo/machine.yaml": `machine: a servo lathe
kind: bar-lathe
spindle:
  motor: { kind: servo, torque: 8 to 12 N*m, torque-constant: 1.2 N*m/A, pole-pairs: 4, inductance: 8 mH, resistance: 0.8 to 1.2 ohm,
    highest-speed: 3000 to 5000 rpm }
  drive: { rated-current: 25 A, input-phases: 3, bus: { capacitance: 800 uF } }
  belts: { only: { motor-pulley: 100 mm, spindle-pulley: 100 mm, centre: 400 mm } }
  highest-speed: 2000 rpm
`,
};
const bench = parseShop(new Map(Object.entries(more).map(([file, text]) => [file, { text }])), waywright.keys);

/** Shops as found, on estimates: their samples are points where a figure really is asked for. */
const evaluations = [example, bench].map((shop) => evaluate(build(waywright, resolve(shop, waywright.keys, asFound)), "quick"));
interface Found {
  readonly cell: FigureCell;
  readonly evaluation: Evaluation;
}
const cellsOf = new Map<unknown, Found[]>();
for (const evaluation of evaluations) {
  for (const cell of evaluation.graph.cells.values()) {
    if (cell.is === "figure") cellsOf.set(cell.decl, [...(cellsOf.get(cell.decl) ?? []), { cell, evaluation }]);
  }
}

/** What stands at the end of a need. */
function target(ref: Ref<unknown>): Exclude<AnyRef, { decl: "via" | "first" | "perhaps" }> {
  const r = ref as AnyRef;
  if (r.decl === "via" || r.decl === "perhaps") return target(r.to);
  if (r.decl === "first") return target(r.refs[0] as Ref<unknown>);
  return r;
}
const kindOfNeed = (f: Signed, name: string): string | null => {
  const ref = f.needs[name];
  const t = ref && target(ref);
  return t && "kind" in t ? (t.kind ?? null) : null;
};
const isConstant = (f: Signed, name: string): boolean => {
  const ref = f.needs[name];
  return ref !== undefined && target(ref).id.startsWith("constant.");
};

/** One sample of a cell's column. */
function sampleOf({ filled }: Evaluation, cell: Cell, k: number): unknown {
  const column = filled.get(cell);
  if (!column) return Number.NaN;
  return "v" in column ? column.v[k % column.v.length] : column.each[k % column.each.length];
}

type Point = Record<string, unknown>;
/** A sample of a shop, as it stands: what belongs together stays together. null where a need has no value. */
function pointOf({ cell, evaluation }: Found, k: number): Point | null {
  const x: Point = {};
  for (const [name, need] of cell.needs) {
    if (isMissing(need) && cell.decl.needs[name]?.decl !== "perhaps") return null;
    const value = isMissing(need) ? null : sampleOf(evaluation, need, k);
    if (value === undefined || Number.isNaN(value)) return null;
    x[name] = value;
  }
  return x;
}

/** A believable point where the example has no such thing; null where a need is no number. */
function drawn(f: Signed, next: () => number): Point | null {
  const x: Point = {};
  for (const [name, ref] of Object.entries(f.needs)) {
    const t = target(ref);
    if (t.decl === "value" || t.decl === "slot" || (t.decl === "input" && t.form !== "quantity")) return null;
    if (isConstant(f, name)) x[name] = (t as Figure).of({} as never);
    else if (kindOfNeed(f, name) === "count") x[name] = 1 + Math.floor(next() * 4);
    else if (kindOfNeed(f, name) === "temperature") x[name] = 280 + 80 * next();
    else if (kindOfNeed(f, name) === "share") x[name] = 0.2 + 0.6 * next();
    else if (kindOfNeed(f, name) === "ratio") x[name] = 0.3 + 0.6 * next();
    else x[name] = 0.5 + 1.5 * next();
  }
  return x;
}

function valueAt(f: Signed, x: Point): number {
  const valid = f.valid as ((x: unknown) => string | null) | undefined;
  if (valid && valid(x) !== null) return Number.NaN;
  if (f.decl === "figure") return (f.of as (x: unknown) => number)(x);
  const brief = (f.brief as (x: unknown) => Json)(x);
  return (f.read as (r: Json) => number)(f.job.run(brief));
}

/** Points looked at: fewer where each is a simulation. */
const POINTS = { figure: 200, simulated: 12 } as const;
/** Step of a need, and what the arithmetic of a figure may lose, both as shares. */
const STEP = 0.02;
const ROUNDING = { figure: 1e-9, simulated: 2e-4 } as const;

test("there are signs to look at", () => {
  expect(signed.length).toBeGreaterThan(60);
});

test.each(signed.map((f) => [f.id, f] as const))("%s: it moves with its needs as it says", (_, f) => {
  const cells = cellsOf.get(f) ?? [];
  const wrong: string[] = [];
  for (const [name, sign] of Object.entries(f.signs ?? {})) {
    let looked = 0;
    for (let n = 0; n < 4 * POINTS[f.decl] && looked < POINTS[f.decl]; n += 1) {
      const next = uniforms(`${f.id} ${name} ${n}`);
      const cell = cells[n % Math.max(1, cells.length)];
      const x = (cell ? pointOf(cell, 7 * n) : null) ?? drawn(f, next);
      if (!x || typeof x[name] !== "number") continue;
      const before = valueAt(f, x);
      // A count goes up by one, all else by a small share.
      const after = valueAt(f, { ...x, [name]: kindOfNeed(f, name) === "count" ? x[name] + 1 : x[name] * (1 + STEP) });
      if (!Number.isFinite(before) || !Number.isFinite(after)) continue;
      looked += 1;
      const rise = (sign === "+" ? after - before : before - after) / Math.max(Math.abs(before), Math.abs(after), 1e-12);
      if (rise < -ROUNDING[f.decl]) wrong.push(`${name} ${sign} at ${JSON.stringify(x).slice(0, 600)}: ${before} to ${after}`);
    }
    expect(looked, `points at which ${name} can be moved`).toBeGreaterThan(0);
  }
  expect(wrong.slice(0, 3)).toEqual([]);
});
