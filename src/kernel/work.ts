// One figure from values given on the line, with no shop: the same declarations and the same evaluator, on a bench of its own.
import { amountOf, type Amount } from "./answer.ts";
import { type Column, isColumn } from "./band.ts";
import type { System } from "./display.ts";
import { type Evaluation, evaluateCone } from "./evaluate.ts";
import type { AnyRef, Figure, Input, Joint, JointPart, Ref, Simulated, Value } from "./figure.ts";
import type { FindingCode } from "./finding.ts";
import { type Cell, cone, type FigureCell, type Graph, type InputCell, isMissing, type Missing, type PartCell } from "./graph.ts";
import { type House, kindOfRef, quantityOf } from "./house.ts";
import { type Item, machine } from "./item.ts";
import { asFound, type Leaf } from "./model/node.ts";
import { nearest } from "./nearest.ts";
import { type Issue, readPair, readQuantity } from "./quantity.ts";
import type { Kind } from "./kind.ts";
import type { Slot } from "./slot.ts";
import { type Working, workingOf } from "./working.ts";

export interface WorkError {
  readonly code: FindingCode | "figure-unknown" | "name-unknown" | "needs-missing" | "refused" | "not-a-number";
  readonly message: string;
  readonly nearest?: string;
  /** The name under which the bad value was given. */
  readonly name?: string;
  /** What is still wanted: names as in the formula, ids of what lies below. */
  readonly missing?: readonly string[];
}
export interface Worked {
  readonly id: string;
  readonly figure: Ref<unknown>;
  readonly column: Column;
  readonly amount: Amount;
  readonly working: Working;
}

type Workable = Figure | Simulated | JointPart | Value<unknown>;

/** Figures that can be worked out alone, by id. */
export function workable(house: House): Workable[] {
  return house.rooms.flatMap((r) => r.figures);
}

export interface Field {
  /** As in the formula. */
  readonly name: string;
  readonly id: string;
  readonly says: string;
  readonly symbol: string;
  readonly kind: Kind | null;
  readonly unit: string;
  readonly form: Input["form"] | "figure";
  readonly words: readonly string[];
  readonly typical: string | null;
  readonly optional: boolean;
}

/** The fields of a figure standing alone: every need under its name. */
export function fieldsOf(d: Workable): Field[] {
  const needs = d.decl === "part" ? d.joint.needs : d.needs;
  return Object.entries(needs).map(([name, ref]) => fieldOf(name, ref));
}

/** The field of one need; what lies below the needs of a figure goes by its id. */
export function fieldOf(name: string, ref: Ref<unknown>): Field {
  const { target, optional } = targetOf(ref);
  const input = target.decl === "input" ? target : null;
  return {
    name,
    id: target.id,
    says: target.says,
    symbol: "symbol" in target ? (target.symbol ?? "") : "",
    kind: kindOfRef(target) as Kind | null,
    unit: "unit" in target ? target.unit : "",
    form: input ? input.form : "figure",
    words: input?.words ?? [],
    typical: input?.typical?.value ?? input?.typicalWords?.[0] ?? null,
    optional,
  };
}

type Target = Input<unknown> | Figure | Simulated | JointPart | Value<unknown> | Slot<unknown>;

/** What stands at the end of a need: links, firsts and perhapses followed. */
function targetOf(ref: Ref<unknown>): { target: Target; optional: boolean } {
  const r = ref as AnyRef;
  if (r.decl === "via") return targetOf(r.to);
  if (r.decl === "perhaps") return { target: targetOf(r.to).target, optional: true };
  if (r.decl === "first") {
    const head = r.refs[0];
    if (!head) throw new Error(`first of nothing: ${r.id}`);
    return targetOf(head);
  }
  return { target: r, optional: false };
}

/** Every name a need answers to: as in the formula, its id, its last words, its symbol. */
function namesOf(house: House, name: string | null, t: Target): string[] {
  const room = house.roomOf.get(t)?.name ?? "";
  const last = t.id.split(".").at(-1) ?? t.id;
  const symbol = "symbol" in t && t.symbol ? [t.symbol] : [];
  return [...(name === null ? [] : [name]), t.id, ...(t.decl === "input" ? [t.key] : [quantityOf(t.id, room, t.per)]), last, ...symbol];
}

const bench: Item = { scope: machine, root: "bench", path: [], parent: null, named: false };

/** Works one figure out. Values are texts as in the files; a need that is not given is worked out from its own needs or takes its typical band. */
export function workOut(house: House, id: string, given: Readonly<Record<string, string>>, system: System): Worked | WorkError {
  const d = workable(house).find((f) => f.id === id);
  if (!d)
    return {
      code: "figure-unknown",
      message: `there is no figure ${id}`,
      ...near(
        id,
        workable(house).map((f) => f.id),
      ),
    };
  const used = new Set<string>();
  const errors: WorkError[] = [];
  const missing: string[] = [];
  /** What is wanted by the sentence that says so: a way that was tried last may still be the one that counts. */
  const refusals = new Map<string, string>();
  const cells = new Map<string, Cell>();
  const top = d.decl === "part" ? d.joint.needs : d.needs;
  const topSymbols = new Set(Object.entries(top).flatMap(([name, ref]) => namesOf(house, name, targetOf(ref).target)));

  /** The word under which a need is given, if it is. */
  const pick = (name: string | null, t: Target, depth: number): string | undefined => {
    const all = namesOf(house, name, t);
    // Below the top level a symbol may mean something else; the full name never does.
    const usable = depth === 0 ? all : all.filter((n) => n === t.id || (t.decl === "input" && n === t.key) || !topSymbols.has(n));
    const hit = usable.find((n) => Object.hasOwn(given, n));
    if (hit !== undefined) used.add(hit);
    return hit;
  };

  /** A cell for what is given under a word. Two needs of one kind at two things (two pulleys) have a word each and spread apart. */
  const inputOf = (t: Target, word: string): InputCell => {
    const known = cells.get(`given ${word} ${t.id}`);
    if (known?.is === "input") return known;
    const text = given[word] ?? "";
    const decl = t.decl === "input" ? t : benchInput(t);
    const issue = check(decl, text);
    if (issue) errors.push({ ...issue, name: word });
    const leaf = leafOf(decl, text);
    return put(`given ${word} ${t.id}`, { is: "input", address: `bench/${word}`, item: bench, room: "", decl, leaf, estimate: null });
  };
  const isSaid = (word: string | undefined): word is string => word !== undefined && given[word] !== "unknown" && given[word] !== "none";
  const refuse = (name: string | null, id: string, depth: number): Missing => {
    // Below the top the short names are those of another formula.
    const wanted = depth === 0 && name !== null ? name : id;
    const says = `${id} is not given`;
    missing.push(wanted);
    refusals.set(says, wanted);
    return { missing: "required", says };
  };

  const need = (name: string | null, ref: Ref<unknown>, depth: number): Cell | Missing => {
    const r = ref as AnyRef;
    if (r.decl === "first") {
      for (const one of r.refs) {
        const { target } = targetOf(one);
        const word = pick(name, target, depth);
        if (isSaid(word)) return inputOf(target, word);
      }
      const before = missing.length;
      for (const one of r.refs) {
        const cell = need(null, one, depth);
        if (!isMissing(cell)) {
          missing.length = before;
          return cell;
        }
      }
      missing.length = before;
      return refuse(name, r.id, depth);
    }
    const { target, optional } = targetOf(ref);
    const word = pick(name, target, depth);
    if (isSaid(word)) return inputOf(target, word);
    if (word !== undefined && given[word] === "none" && !optional) return refuse(name, target.id, depth);
    if (optional) return { missing: "not-there", says: "not given" };
    return own(name, target, depth);
  };

  const own = (name: string | null, t: Target, depth: number): Cell | Missing => {
    const known = cells.get(t.id);
    if (known) return known;
    if (t.decl === "input") {
      if (t.typical && "of" in t.typical) {
        const before = missing.length;
        const estimate = need(null, t.typical.of, depth + 1);
        if (t.typical.value !== undefined) missing.length = before;
        if (!isMissing(estimate) || t.typical.value === undefined)
          return isMissing(estimate)
            ? estimate
            : put(t.id, { is: "input", address: `bench/${t.id}`, item: bench, room: "", decl: t, leaf: null, estimate });
      }
      if (!t.typical && !t.typicalWords) return refuse(name, t.id, depth);
      return put(t.id, { is: "input", address: `bench/${t.id}`, item: bench, room: "", decl: t, leaf: null, estimate: null });
    }
    if (t.decl === "slot") return refuse(name, t.id, depth);
    return computed(t, depth + 1);
  };

  const put = <C extends Cell>(key: string, cell: C): C => {
    cells.set(key, cell);
    return cell;
  };

  const computed = (t: Workable, depth: number): Cell | Missing => {
    if (t.decl === "part") {
      const joint = whole(t.joint, depth);
      return put(t.id, { is: "part", address: `bench/${t.id}`, item: bench, room: "", decl: t, joint } satisfies PartCell);
    }
    return put(t.id, whole(t, depth));
  };

  const whole = (t: Figure | Simulated | Value<unknown> | Joint, depth: number): FigureCell => {
    const held = cells.get(`whole ${t.id}`);
    if (held?.is === "figure") return held;
    const needs = new Map(Object.entries(t.needs).map(([name, ref]) => [name, need(name, ref, depth)] as const));
    const close = t.decl === "simulated" && t.estimate ? own(null, targetOf(t.estimate).target, depth + 1) : null;
    const waits = [...needs.entries()].find(
      ([name, c]) => isMissing(c) && c.missing === "required" && t.needs[name]?.decl !== "perhaps",
    )?.[1];
    return put(`whole ${t.id}`, {
      is: "figure",
      address: `bench/${t.id}`,
      item: bench,
      room: "",
      decl: t,
      needs,
      waits: waits && isMissing(waits) ? waits : null,
      estimate: close && !isMissing(close) ? close : null,
    });
  };

  // What is given for the figure itself goes for the figures below it too, unless it is another thing's.
  for (const [name, ref] of Object.entries(top)) {
    if (ref.decl === "via") continue;
    const { target } = targetOf(ref);
    const word = pick(name, target, 0);
    if (isSaid(word)) put(target.id, inputOf(target, word));
  }
  const cell = computed(d, 0);
  const unused = Object.keys(given).filter((n) => !used.has(n));
  if (unused[0] !== undefined) {
    const names = fieldsOf(d).map((f) => f.name);
    return {
      code: "name-unknown",
      message: `${id} takes no ${unused[0]}; it takes ${names.join(", ")}`,
      ...near(unused[0], [...topSymbols]),
    };
  }
  if (errors[0]) return errors[0];
  if (missing.length > 0 || isMissing(cell)) {
    const wanted = [...new Set(missing)];
    return { code: "needs-missing", message: `${id} still needs ${wanted.join(", ")}`, missing: wanted };
  }
  const filled = evaluateCone(cone(cell), "full", new Map());
  const result = filled.get(cell);
  if (!result || !isColumn(result)) return { code: "not-a-number", message: `${id} is a table, not a number` };
  if (Number.isNaN(result.v[0])) {
    const message = [...(result.holes?.keys() ?? [])][0] ?? "no value";
    const wanted = refusals.get(message);
    return { code: "refused", message, ...(wanted === undefined ? {} : { missing: [wanted] }) };
  }
  const decl = d as Exclude<Workable, Value<unknown>>;
  const graph: Graph = {
    house,
    model: {
      title: "",
      show: { units: system.units, also: null, pressure: system.pressure ?? "bar", currency: system.currency ?? "" },
      roots: new Map(),
      findings: [],
      options: [],
      records: [],
      variant: asFound,
    },
    items: [bench],
    cells: new Map(),
    checks: [],
    notices: [],
    stands: () => false,
    find: () => ({ missing: "not-there", says: "" }),
    holder: () => bench,
  };
  const evaluation: Evaluation = { graph, mode: "full", filled, memo: new Map() };
  return { id, figure: d, column: result, amount: amountOf(result, decl, system), working: workingOf(evaluation, cell, system) };
}

const near = (word: string, among: readonly string[]): { nearest?: string } => {
  const n = nearest(word, among);
  return n === undefined ? {} : { nearest: n };
};

/** A figure, part or slot given as a value is read like an input of its kind. */
function benchInput(t: Exclude<Target, Input<unknown>>): Input<unknown> {
  const kind = (kindOfRef(t) ?? null) as Kind | null;
  return {
    decl: "input",
    form: t.decl === "value" ? "list" : "quantity",
    id: t.id,
    key: t.id,
    per: machine,
    says: t.says,
    measure: "",
    unit: "unit" in t ? t.unit : "",
    kind,
  };
}

/** "0, 30, 90 deg": a unit at the end goes for all that have none. */
function listTexts(text: string): string[] {
  const parts = text
    .split(/[,;\n]/)
    .map((p) => p.trim())
    .filter((p) => p !== "");
  const unit = /^[-+]?[\d.]+(?:e[-+]?\d+)?\s+(.+)$/i.exec(parts.at(-1) ?? "")?.[1];
  return parts.map((p) => (unit && /^[-+]?[\d.]+(?:e[-+]?\d+)?$/i.test(p) ? `${p} ${unit}` : p));
}

function leafOf(decl: Input<unknown>, text: string): Leaf {
  const place = { file: "", line: 1, column: 1, endLine: 1, endColumn: 1 };
  const joined = decl.form === "list" || decl.form === "lists" ? listTexts(text).join("\n") : text;
  return { is: "leaf", text: joined, place, origin: { by: "line" }, from: "given", over: [] };
}

function check(decl: Input<unknown>, text: string): WorkError | null {
  const worded = (i: Issue | undefined): WorkError => ({
    code: i?.code ?? "number-bad",
    message: `${decl.says}: ${i?.says ?? "cannot be read"}`,
    ...(i?.nearest === undefined ? {} : { nearest: i.nearest }),
  });
  if (decl.form === "word") {
    const words = decl.words ?? [];
    return words.includes(text)
      ? null
      : { code: "unknown-word", message: `${decl.says}: "${text}" is none of ${words.join(", ")}`, ...near(text, words) };
  }
  if (decl.kind === null) return null;
  if (decl.form === "pair") {
    const pair = readPair(text, decl.kind);
    return pair.ok ? null : worded(pair.issues[0]);
  }
  for (const t of decl.form === "list" ? listTexts(text) : [text]) {
    const r = readQuantity(t, decl.kind);
    if (!r.ok) return worded(r.issues[0]);
  }
  return null;
}
