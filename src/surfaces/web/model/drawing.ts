// The machine drawing laid out from the model: which blocks are there, the worst verdict of each, and its key figures.
import type { Answer, CheckAnswer } from "../../../kernel/answer.ts";
import type { Block, MachineDrawing, Place } from "../../../pictures/blocks-spec.ts";
import type { Plan, Thing } from "../worker/plan.ts";
import { prettyUnit } from "../../../kernel/display.ts";
import { machineName, variantWords } from "./names.ts";
import { checksOf, worst } from "./rooms.ts";

interface Drawn {
  readonly answer: Answer;
  readonly plan: Plan;
  readonly root: string;
  readonly options: readonly string[];
  readonly width: number;
  readonly hrefOf: (room: string) => string;
}

type Figures = Block["figures"];

export function drawingOf(d: Drawn): MachineDrawing {
  const { answer, plan, root, options, width } = d;
  const blocks = { ...known(d), ...toCome(d) };
  const records = answer.records.filter((r) => r.machine === root && r.accepted && r.aside === null).length;
  const typical = Object.values(answer.inputs).filter((i) => i.address.startsWith(`${root}/`) && i.origin.by === "typical").length;
  const title = `${machineName(root)} ${variantWords(options)}`;
  const said = Object.values(blocks).map((b) => `${b.name}${b.verdict ? ` ${b.verdict}` : ""}`);
  const stations = (plan[root] ?? []).find((t) => t.kind.startsWith("carousel"));
  return {
    title,
    note: `${records} ${records === 1 ? "record" : "records"}, ${typical} typical values`,
    label: `Machine drawing, ${title}: ${said.join(", ")}`,
    width,
    blocks,
    tools: stations ? { kind: "carousel", stations: 12 } : { kind: "turret", stations: 6 },
  };
}

/** Blocks of which a room knows something. */
function known({ answer, plan, root, hrefOf }: Drawn): Partial<Record<Place, Block>> {
  const there = plan[root] ?? [];
  const has = (path: string): boolean => there.some((t) => t.path === path);
  const checks = checksOf(answer, root);
  const verdictOf = (of: (c: CheckAnswer) => boolean): Pick<Block, "verdict"> => {
    const verdict = worst(checks.filter(of).map((c) => c.verdict));
    return verdict === null ? {} : { verdict };
  };
  const input = (address: string): string | null => {
    const i = answer.inputs[`${root}/${address}`] ?? answer.inputs[`shop/${address}`];
    // A block has room for the number alone; its spread stands in the room.
    return i && i.origin.by !== "typical" ? prettyUnit(i.text.replace(/\s*\+\/-.*$/, "")) : null;
  };
  const figure = (address: string): string | null => {
    const f = answer.figures[`${root}/${address}`] ?? answer.figures[`shop/${address}`];
    return f && typeof f.amount.nominal === "number" ? prettyUnit(f.amount.text) : null;
  };
  const spindle = hrefOf("spindle");
  const belt = there.find((t) => t.path.startsWith("spindle.belts."));
  const ratio = belt && figure(`${belt.path}.ratio`);
  const supply = answer.rooms.some((r) => r.name === "supply");
  return {
    ...(supply
      ? {
          supply: {
            name: "Supply",
            ...verdictOf((c) => c.room === "supply"),
            figures: two([
              joined([input("supply.voltage"), input("supply.kind")]),
              both("of", input("supply.rating"), figure("supply.current")),
            ]),
            href: hrefOf("supply"),
          },
        }
      : {}),
    ...(has("spindle.drive") || has("spindle")
      ? {
          drive: {
            name: "Drive",
            ...verdictOf((c) => c.item === `${root}/spindle.drive`),
            figures: two([
              after(figure("spindle.drive.fed-phases"), "phase in"),
              after(figure("spindle.drive.output-voltage-max"), "at most"),
            ]),
            href: spindle,
          },
        }
      : {}),
    ...(has("spindle.motor")
      ? {
          motor: {
            name: "Motor",
            ...verdictOf((c) => c.item === `${root}/spindle.motor` || c.address === `${root}/spindle.thermal`),
            figures: two([
              joined([input("spindle.motor.connected"), figure("spindle.motor.rated-voltage")]),
              before("pull-out", figure("spindle.motor.breakdown-torque")),
            ]),
            href: spindle,
          },
        }
      : {}),
    ...(belt ? { belt: { name: "Belt", figures: two([ratio ? `${ratio} : 1` : null]), href: spindle } } : {}),
    ...(has("spindle")
      ? {
          spindle: {
            name: "Spindle",
            ...verdictOf((c) => c.room === "spindle" && (c.item === `${root}/spindle` || c.item.startsWith(`${root}/work/`))),
            figures: two([before("to", input("spindle.highest-speed"))]),
            href: spindle,
          },
        }
      : {}),
  };
}

const joined = (words: readonly (string | null)[]): string | null => {
  const said = words.filter((word) => word !== null);
  return said.length === 0 ? null : said.join(", ");
};
const before = (word: string, text: string | null): string | null => (text === null ? null : `${word} ${text}`);
const after = (text: string | null, word: string): string | null => (text === null ? null : `${text} ${word}`);
const both = (word: string, all: string | null, part: string | null): string | null =>
  all === null ? part : part === null ? all : `${part} ${word} ${all}`;

function two(lines: readonly (string | null)[]): Figures {
  const [first, second] = lines.filter((line) => line !== null);
  return first === undefined ? [] : second === undefined ? [first] : [first, second];
}

/** Which room will speak for a block. */
const roomOf: readonly {
  readonly place: Place;
  readonly name: string;
  readonly room: string;
  readonly is: (t: Thing) => boolean;
  readonly shop?: true;
}[] = [
  { place: "bar-feed", name: "Bar feed", room: "axes", is: (t) => t.path === "bar-feed" },
  { place: "closer", name: "Closer", room: "air", is: (t) => t.kind === "collet-closer" },
  { place: "turret", name: "Turret", room: "sequences", is: (t) => t.kind === "indexer-lift" || t.kind.startsWith("carousel") },
  { place: "cut-off", name: "Cut-off", room: "sequences", is: (t) => t.path === "devices.cut-off" || t.path === "devices.catcher" },
  { place: "axes", name: "Axes", room: "axes", is: (t) => t.path.startsWith("axes.") },
  { place: "board", name: "Board", room: "wiring", is: (t) => t.path === "controller" || t.path === "control" },
  { place: "compressor", name: "Compressor", room: "air", is: (t) => t.path.startsWith("air.compressors."), shop: true },
  { place: "receiver", name: "Receiver", room: "air", is: (t) => t.path.startsWith("air.receivers."), shop: true },
];

/** Blocks that the machine has and no room speaks for yet. */
function toCome({ answer, plan, root, hrefOf }: Drawn): Partial<Record<Place, Block>> {
  const blocks: Partial<Record<Place, Block>> = {};
  for (const { place, name, room, is, shop } of roomOf) {
    const things = (plan[shop ? "shop" : root] ?? []).filter(is);
    if (things.length === 0) continue;
    const speaks = answer.rooms.some((r) => r.name === room);
    const verdict = speaks
      ? worst(
          answer.checks
            .filter((c) => c.room === room && things.some((t) => c.item.startsWith(`${shop ? "shop" : root}/${t.path}`)))
            .map((c) => c.verdict),
        )
      : null;
    const names = things.map((t) => t.path.split(".").at(-1) ?? "");
    const many = place === "axes" ? names.map((n) => n.toUpperCase()).join(", ") : null;
    blocks[place] = {
      name: many === null ? name : `${many} ${names.length === 1 ? "axis" : "axes"}`,
      figures: speaks ? [] : ["no room yet"],
      ...(verdict === null ? {} : { verdict }),
      ...(speaks ? { href: hrefOf(room) } : {}),
      ...(place === "closer" || place === "bar-feed" || place === "turret" || place === "cut-off" ? { air: true } : {}),
      ...(place === "turret" || place === "axes" || place === "closer" ? { signal: true } : {}),
    };
  }
  return blocks;
}
