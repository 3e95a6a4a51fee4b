// waywright sweep: figures along a range of one input.
import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { systemOf } from "../../kernel/answer.ts";
import { band, isColumn } from "../../kernel/band.ts";
import { show, write } from "../../kernel/display.ts";
import type { Evaluation } from "../../kernel/evaluate.ts";
import type { Finding } from "../../kernel/finding.ts";
import { isMissing } from "../../kernel/graph.ts";
import { addressOf, keyNodeAt } from "../../kernel/model/address.ts";
import type { Model, Variant } from "../../kernel/model/node.ts";
import { readQuantity } from "../../kernel/quantity.ts";
import type { Kind } from "../../kernel/unit.ts";
import { marginColumn } from "../../kernel/verdict.ts";
import { waywright } from "../../rooms/index.ts";
import { type Named, namesOf, oneNamed } from "./addresses.ts";
import { type Given, wholeNumber } from "./arguments.ts";
import type { Status } from "./checked.ts";
import { allFindings, type Desk, evaluated, hasError, openDesk, studyOf, variantGiven } from "./desk.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import type { Run, Sweep } from "./swept.ts";
import { sweepCsv, sweepPage } from "./sweep-text.ts";
import { sweepSvg } from "./sweep-svg.ts";
import { print, type Terminal } from "./terminal.ts";

const usualSteps = 11;
const mostSteps = 500;

export function sweep(given: Given, t: Terminal, cwd: string): Status {
  const steps = wholeNumber("--steps", given.value("steps") ?? String(usualSteps), 2, mostSteps);
  const desk = openDesk(given, cwd);
  const [word, range, ...wanted] = desk.words;
  if (word === undefined || range === undefined || wanted.length === 0)
    throw new Misuse(
      "argument-missing",
      'sweep wants an input, a range and one figure or more: waywright sweep lathe/supply.run.length "5 to 60 m" supply.voltage-at-machine',
    );
  const svg = given.value("svg");
  if (svg !== undefined && wanted.length > 2) throw new Misuse("argument-extra", "a drawing holds one or two figures");
  const variant = variantGiven(desk, given);
  const base = studyOf(desk, variant);
  const input = inputNamed(desk, base.evaluation, word);
  const span = spanOf(input, range);
  const names = namesOf(base.evaluation.graph);
  const figures = wanted.map((w) => oneNamed(w, names, desk.machine ?? (input.root === "shop" ? null : input.root)));
  const texts = Array.from({ length: steps }, (_, i) =>
    write(span.low + ((span.high - span.low) * i) / (steps - 1), input.kind, span.unit),
  );
  const { runs, findings } = walk(desk, variant, base.evaluation, { root: input.root, path: input.path, texts, figures });
  const system = systemOf(base.model);
  const shown = texts.map((_, i) => show(span.low + ((span.high - span.low) * i) / (steps - 1), input.kind, system));
  const result: Sweep = {
    input: { address: input.address, says: input.says, unit: shown[0]?.unit ?? "", values: shown.map((s) => Number(s.number)) },
    texts,
    runs,
  };
  const all = allFindings(desk, [...base.answer.findings, ...findings]);
  if (svg !== undefined) save(resolve(cwd, svg), sweepSvg(result));
  if (given.has("json")) t.out(json({ ...result, findings: all }));
  else if (given.has("csv")) t.out(sweepCsv(result));
  else print(t, sweepPage(t, result, all, svg));
  return hasError(all) ? 2 : 0;
}

interface SweptInput {
  readonly address: string;
  readonly root: string;
  readonly path: string;
  readonly says: string;
  readonly kind: Kind;
}

/** The input by its address; below a root that need not be said where one alone fits. What nobody wrote yet may be swept too. */
function inputNamed(desk: Desk, e: Evaluation, word: string): SweptInput {
  const inputs = [...e.graph.cells.values()].filter((c) => c.is === "input");
  const names = inputs.map((c): Named => ({ address: c.address, id: c.decl.id, root: c.item.root }));
  const unwritten = unwrittenInput(desk, word);
  const address = names.some((n) => n.address === word) || !unwritten ? oneNamed(word, names, desk.machine).address : unwritten;
  const root = address.slice(0, address.indexOf("/"));
  const path = address.slice(root.length + 1);
  const decl =
    inputs.find((c) => c.address === address)?.decl ?? keyNodeAt(addressOf(path, root, desk.parsed.machines), waywright.keys)?.input;
  if (!decl || decl.form !== "quantity" || decl.kind === null)
    throw new Misuse("argument-bad", `${address} is no single quantity; lay options over to compare words and tables`);
  return { address, root, path, says: decl.says, kind: decl.kind };
}

/** An address of a key that the files may hold and do not. */
function unwrittenInput(desk: Desk, word: string): string | null {
  const slash = word.indexOf("/");
  const root = word.slice(0, Math.max(0, slash));
  if (root !== "shop" && !desk.parsed.machines.has(root)) return null;
  return keyNodeAt(addressOf(word.slice(slash + 1), root, desk.parsed.machines), waywright.keys)?.input ? word : null;
}

function spanOf(input: SweptInput, text: string): { low: number; high: number; unit: string } {
  const read = readQuantity(text, input.kind, { key: input.path.split(".").at(-1) ?? input.path });
  if (!read.ok)
    throw new Misuse(
      "argument-bad",
      `the range: ${read.issues[0].says}`,
      read.issues[0].nearest === undefined ? [] : [read.issues[0].nearest],
    );
  if (!(read.low < read.high)) throw new Misuse("argument-bad", `"${text}" is no range; write two ends, such as "100 to 200 mm"`);
  return { low: read.low, high: read.high, unit: read.unit };
}

interface Walk {
  readonly root: string;
  readonly path: string;
  readonly texts: readonly string[];
  readonly figures: readonly Named[];
}

/** Evaluates the shop once for each value. */
function walk(
  desk: Desk,
  variant: Variant,
  before: Evaluation,
  { root, path, texts, figures }: Walk,
): { runs: Run[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const runs = figures.map((f) => ({ ...headOf(before, f), nominal: [] as number[], low: [] as number[], high: [] as number[] }));
  for (const text of texts) {
    const step = evaluated(desk, { ...variant, tries: [...variant.tries, { root, path, text }] }, before);
    findings.push(...step.findings.filter((f) => f.place.file === "tried"));
    figures.forEach((f, i) => {
      const run = runs[i];
      const [nominal, low, high] = bandOf(step.evaluation, f);
      run?.nominal.push(nominal);
      run?.low.push(low);
      run?.high.push(high);
    });
  }
  return { runs, findings: findings.slice(0, 1) };
}

function headOf(e: Evaluation, f: Named): Omit<Run, "nominal" | "low" | "high"> {
  const check = e.graph.checks.find((c) => c.address === f.address);
  if (check) return { address: f.address, says: check.decl.asks, symbol: "margin", unit: "" };
  const cell = e.graph.cells.get(f.address);
  if (!cell || !("kind" in cell.decl) || !cell.decl.kind) throw new Misuse("argument-bad", `${f.address} is no single number`);
  const symbol = "symbol" in cell.decl ? (cell.decl.symbol ?? "") : "";
  return { address: f.address, says: cell.decl.says, symbol, unit: show(0, cell.decl.kind, systemOf(e.graph.model)).unit };
}

/** Nominal, low and high in the shown unit. */
function bandOf(e: Evaluation, f: Named): [number, number, number] {
  const check = e.graph.checks.find((c) => c.address === f.address);
  if (check) {
    const [d, c] = [check.demand, check.capacity].map((s) => (isMissing(s) ? undefined : e.filled.get(s)));
    if (!d || !c || !isColumn(d) || !isColumn(c)) return [Number.NaN, Number.NaN, Number.NaN];
    const b = band(marginColumn(d, c));
    return [b.nominal, b.low, b.high];
  }
  const cell = e.graph.cells.get(f.address);
  const filled = cell && e.filled.get(cell);
  if (!cell || !filled || !isColumn(filled) || !("kind" in cell.decl) || !cell.decl.kind) return [Number.NaN, Number.NaN, Number.NaN];
  const { kind } = cell.decl;
  const b = band(filled);
  return [b.nominal, b.low, b.high].map((x) => inShown(x, kind, e.graph.model)) as [number, number, number]; // three in, three out
}

const inShown = (x: number, kind: Kind, model: Model): number =>
  Number.isFinite(x) ? Number(show(x, kind, systemOf(model), csvDigits).number) : x;
/** More than any drawing shows, fewer than the noise of binary numbers. */
const csvDigits = 9;

function save(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new Misuse("not-written", `${path} was not written: ${error instanceof Error ? error.message : String(error)}`);
  }
}
