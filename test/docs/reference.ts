// The generated parts of the documents: tables of keys, figures and checks, written from the declarations of each room.
import { kindOfRef } from "../../src/kernel/house.ts";
import type { AnyRef, Input } from "../../src/kernel/figure.ts";
import { machine, type Scope, shop } from "../../src/kernel/item.ts";
import type { KeyNode } from "../../src/kernel/model/key-node.ts";
import { keysOfFile } from "../../src/kernel/model/role.ts";
import type { Ref } from "../../src/kernel/ref.ts";
import type { Room } from "../../src/kernel/room.ts";
import { kindInfo } from "../../src/kernel/unit.ts";
import { waywright } from "../../src/rooms/index.ts";

/** Text in a cell of a table: one line, and no sign that would end the cell. */
const cell = (text: string): string => text.replaceAll("\n", " ").replaceAll("|", "\\|");
const code = (text: string): string => `\`${text}\``;
const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => "---"), ...rows].map((row) => `| ${row.map(cell).join(" | ")} |`).join("\n");
const rowsOf = <T>(all: readonly T[], head: string, body: (some: readonly T[]) => string): string[] =>
  all.length === 0 ? [] : [head, body(all)];

/** Where a thing stands, as a heading and a sentence. */
function placeOf(per: Scope): string {
  if (per === shop) return "### In `shop.yaml`";
  if (per === machine) return "### In `machine.yaml`, at the top";
  const at = per.mounts.map((m) => (m.at.startsWith("shop/") ? `${code(m.at.slice(5))} of the shop` : code(m.at)));
  const like = per.like === undefined ? "" : ` Parts of the group ${code(per.like)} in \`catalogue/\` may be laid under it with \`like:\`.`;
  return `### ${per.says[0]?.toUpperCase()}${per.says.slice(1)}\n\nStands at ${at.join(", ")}.${like}`;
}

/** What may be written. */
function formOf(i: Input<unknown>): string {
  const none = i.none ? "; `none`" : "";
  if (i.words) return `${i.words.map(code).join(", ")}${none}`;
  if (i.form === "text") return `text${none}`;
  if (i.form === "lists") return `list of texts${none}`;
  const info = i.kind === null ? null : kindInfo(i.kind);
  const what = info ? `${info.says}, ${info.examples.slice(0, 2).map(code).join(" or ")}` : "a number";
  const many = { list: "list: ", pair: "one, or two with a slash: " }[i.form === "list" ? "list" : "pair"];
  return `${i.form === "quantity" ? "" : many}${what}${none}`;
}

/** What stands in while nobody knows. */
function standIn(i: Input<unknown>): string {
  if (i.required) return "**never assumed**";
  const mark = i.typical?.unchecked ? " *(unchecked)*" : "";
  if (i.typicalWords) return `${i.typicalWords.map(code).join(" or ")}: ${i.wordsSource ?? ""}`;
  if (!i.typical) return "nothing: left out when not written";
  const { value, source } = i.typical;
  const estimate = "of" in i.typical ? `${code(i.typical.of.id)}${value === undefined ? "" : `, else ${code(value)}`}` : code(value ?? "");
  return `${estimate}: ${source}${mark}`;
}

const keyRow = (i: Input<unknown>): string[] => [
  `${code(i.key)}${i.head ? " (a single word fills it)" : ""}${i.was ? `, once ${i.was.map(code).join(", ")}` : ""}`,
  `${i.symbol === undefined ? "" : `${code(i.symbol)}, `}${i.says}`,
  formOf(i),
  standIn(i),
  i.measure,
];
const keyHeads = ["key", "what it is", "written as", "while nobody knows", "how to find out"];

/** Scopes in the order in which a room's keys first name them. */
const scopesOf = (inputs: readonly Input<unknown>[]): Scope[] => [...new Set(inputs.map((i) => i.per))];

/** The keys of a room. */
export function keysSection(room: Room): string {
  const parts = scopesOf(room.inputs).flatMap((per) => [
    placeOf(per),
    table(
      keyHeads,
      room.inputs.filter((i) => i.per === per).map(keyRow),
    ),
  ]);
  const links = rowsOf(room.links, "### Things that name other things", (all) =>
    table(
      ["key", "stands in", "names"],
      all.map((l) => [code(l.key), l.per.says, l.to.says]),
    ),
  );
  return [`## ${room.title}`, ...parts, ...links].join("\n\n");
}

/** The keys that every shop has, whatever rooms there are, and the frames of options and records. */
export function framesSection(): string {
  const owned = new Set<unknown>(waywright.rooms.flatMap((r) => r.inputs));
  const rows = (node: KeyNode, path: readonly string[] = []): string[][] => [
    ...(node.input && !owned.has(node.input) ? [[code(path.join(".")), node.input.says, formOf(node.input), node.input.measure]] : []),
    ...[...node.keys].flatMap(([key, child]) => rows(child, [...path, key])),
  ];
  const heads = ["key", "what it is", "written as", "where it comes from"];
  const at = { machine: "", name: "" };
  const frames = [
    ["shop.yaml", keysOfFile({ is: "shop" }, waywright.keys)],
    ["MACHINE/work/PART.yaml", keysOfFile({ is: "work", ...at }, waywright.keys)],
    ["MACHINE/options/OPTION.yaml", keysOfFile({ is: "option", ...at }, waywright.keys)],
    ["MACHINE/records/RECORD.yaml", keysOfFile({ is: "record", ...at }, waywright.keys)],
  ] as const;
  return ["## Every shop", ...frames.flatMap(([file, top]) => [`### In ${code(file)}`, table(heads, rows(top))])].join("\n\n");
}

/** The id at the end of a need, with how it is looked up. */
function needText(ref: Ref<unknown>): string {
  const r = ref as AnyRef;
  if (r.decl === "perhaps") return `${needText(r.to)} if there is one`;
  if (r.decl === "via") return `${needText(r.to)} of its ${r.links.map((l) => l.says).join("'s ")}`;
  if (r.decl === "first") return r.refs.map(needText).join(", else ");
  return code(r.id);
}

type AnyFigure = Room["figures"][number];
const unitOf = (f: AnyFigure): string => (f.unit === undefined ? "a table" : f.unit);
const symbolOf = (f: AnyFigure): string => ("symbol" in f ? code(f.symbol) : "");
const perOf = (f: AnyFigure): string => f.per.says;

function howOf(f: AnyFigure): string {
  if (f.decl === "part") return `one of the values of ${code(f.joint.id)}: ${f.joint.method}`;
  if (f.decl === "value") return "a table or list, worked out from its needs";
  if (f.decl === "simulated") return `simulated: ${f.method}`;
  return f.formula === undefined ? (f.method ?? "") : code(f.formula);
}
const sourceOf = (f: AnyFigure): string => (f.decl === "part" ? f.joint.source : f.decl === "value" ? "" : f.source);
const needsOf = (f: AnyFigure): string =>
  Object.entries(f.decl === "part" ? f.joint.needs : f.needs)
    .map(([name, ref]) => `${code(name)} ${needText(ref)}`)
    .join("; ");

/** Every figure of a room with its working, and every check. */
export function figuresSection(room: Room): string {
  const figures = table(
    ["figure", "symbol", "unit", "of", "what it is", "how", "source", "needs"],
    room.figures.map((f) => [code(f.id), symbolOf(f), unitOf(f), perOf(f), f.says, howOf(f), sourceOf(f), needsOf(f)]),
  );
  const checks = rowsOf(room.checks, `### Checks of ${room.title.toLowerCase()}`, (all) =>
    table(
      ["check", "asks", "demand", "capacity", "reserve"],
      all.map((c) => [
        code(c.id),
        c.asks,
        needText(c.demand),
        needText(c.capacity),
        `${c.yesNo ? "yes or no" : c.H}${c.guards === "people" ? ", guards people: judged at the worst corner" : ""}`,
      ]),
    ),
  );
  const slots = rowsOf(room.slots, `### Slots of ${room.title.toLowerCase()}`, (all) =>
    table(
      ["slot", "of", "what is offered", "combined", "unit"],
      all.map((s) => [code(s.id), s.per.says, s.says, s.combine, kindOfRef(s) === null ? "" : s.unit]),
    ),
  );
  return [`## ${room.title}`, figures, ...checks, ...slots].join("\n\n");
}

/** The short table of a room's README. */
export function readmeSection(room: Room): string {
  return [
    "## Figures",
    table(
      ["figure", "symbol, unit", "what it is"],
      room.figures.map((f) => [code(f.id), [symbolOf(f), unitOf(f)].filter((t) => t !== "").join(", "), f.says]),
    ),
  ].join("\n\n");
}

/** Rooms that have something to tabulate. */
export const tabled: readonly Room[] = waywright.rooms.filter((r) => r.inputs.length + r.figures.length > 0);
