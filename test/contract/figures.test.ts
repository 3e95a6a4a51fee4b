// One suite over every figure of every room: formula text against code, against units and against the needs.
import { expect, test } from "vitest";
import type { AnyRef, Figure, Ref } from "../../src/kernel/figure.ts";
import { agreesButForAngle, dimensionOfFormula, namesIn, parseFormula, valueOf } from "../../src/kernel/formula.ts";
import { uniforms } from "../../src/kernel/random.ts";
import { dimensionOf, pureNumber } from "../../src/kernel/unit.ts";
import { waywright } from "../../src/rooms/index.ts";

const figures = waywright.rooms.flatMap((r) => r.figures).filter((f): f is Figure => f.decl === "figure");
const written = figures.filter((f) => f.formula !== undefined);

/** What stands at the end of a need. */
function target(ref: Ref<unknown>): Exclude<AnyRef, { decl: "via" | "first" | "perhaps" }> {
  const r = ref as AnyRef;
  if (r.decl === "via" || r.decl === "perhaps") return target(r.to);
  if (r.decl === "first") return target(r.refs[0] as Ref<unknown>);
  return r;
}

const isList = (ref: Ref<unknown>): boolean => {
  const t = target(ref);
  return t.decl === "value" || (t.decl === "input" && (t.form === "list" || t.form === "pair"));
};

/** A believable number for a need: shares and ratios near one half, counts whole, all else between 0.5 and 2 of its unit. */
function draw(ref: Ref<unknown>, next: () => number): number {
  const t = target(ref);
  // A constant is nothing to be drawn: the code holds its value, and the formula must name the same one.
  if (t.decl === "figure" && t.id.startsWith("constant.")) return (t.of as (x: unknown) => number)({});
  const kind = "kind" in t ? t.kind : null;
  if (kind === "count") return 1 + Math.floor(next() * 4);
  if (kind === "share") return 0.2 + 0.6 * next();
  if (kind === "ratio") return 0.3 + 0.6 * next();
  if (kind === "temperature") return 280 + 80 * next();
  return 0.5 + 1.5 * next();
}

const at = (f: Figure, n: number): Record<string, number | readonly number[]> => {
  const next = uniforms(`${f.id} ${n}`);
  const length = 2 + Math.floor(next() * 38);
  return Object.fromEntries(
    Object.entries(f.needs).map(([name, ref]) => [name, isList(ref) ? Array.from({ length }, () => draw(ref, next)) : draw(ref, next)]),
  );
};

test("there are figures to look at", () => {
  expect(written.length).toBeGreaterThan(20);
});

test.each(written.map((f) => [f.id, f] as const))("%s: the formula names just what the figure needs", (_, f) => {
  expect(namesIn(parseFormula(f.formula ?? "")).toSorted()).toEqual(Object.keys(f.needs).toSorted());
});

test.each(written.map((f) => [f.id, f] as const))("%s: the dimension of the formula is that of its unit", (_, f) => {
  const dims = Object.fromEntries(
    Object.entries(f.needs).map(([name, ref]) => {
      const t = target(ref);
      const unit = "unit" in t && t.unit ? t.unit : "";
      return [name, unit ? dimensionOf(unit) : pureNumber];
    }),
  );
  expect(agreesButForAngle(dimensionOfFormula(parseFormula(f.formula ?? ""), dims), dimensionOf(f.unit))).toBe(true);
});

/** Points drawn for each figure, and how many of them must lie where it is valid. */
const POINTS = 50;
const WANTED = 10;

test.each(written.map((f) => [f.id, f] as const))("%s: the formula says what the code does", (_, f) => {
  const formula = parseFormula(f.formula ?? "");
  let seen = 0;
  for (let n = 0; n < 40 * POINTS && seen < POINTS; n += 1) {
    const x = at(f, n);
    const valid = f.valid as ((x: unknown) => string | null) | undefined;
    if (valid && valid(x) !== null) continue;
    const code = (f.of as (x: unknown) => number)(x);
    const text = valueOf(formula, x);
    if (!Number.isFinite(code) && !Number.isFinite(text)) continue;
    seen += 1;
    expect(Math.abs(code - text), `at ${JSON.stringify(x)}: code ${code}, formula ${text}`).toBeLessThanOrEqual(
      1e-9 * Math.max(1e-12, Math.abs(code), Math.abs(text)),
    );
  }
  expect(seen).toBeGreaterThanOrEqual(WANTED);
});
