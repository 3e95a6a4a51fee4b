import { expect, test } from "vitest";
import type { Amount, Answer, CheckAnswer } from "../../kernel/answer.ts";
import { addRoomBrief } from "./check-brief.ts";
import type { Cures, Tried } from "./cures.ts";
import { addMeasureNext, measureNumbers } from "./measure-text.ts";
import { pageFor, type Terminal } from "./terminal.ts";

const terminal = (width = 80): Terminal => ({
  width,
  colour: false,
  unicode: true,
  asks: false,
  out: () => undefined,
  err: () => undefined,
});

const torque = (nominal: number, low: number, high: number): Amount => ({
  nominal,
  low,
  high,
  unit: "N*m",
  kind: "torque",
  text: `${nominal} N*m`,
  band: low === high ? "exact" : `${low} to ${high} N*m`,
});

type Side = CheckAnswer["demand"] & {};
const side = (amount: Amount): Side => ({ address: "lathe/x", says: "torque", amount });

function checkOf(verdict: CheckAnswer["verdict"], more: Partial<CheckAnswer> = {}): CheckAnswer {
  return {
    address: `lathe/spindle.${more.id ?? "turns"}.${more.thing ?? ""}`,
    id: "spindle.turns",
    room: "spindle",
    root: "lathe",
    item: "lathe/spindle",
    thing: "spindle",
    asks: "Does it turn?",
    verdict,
    reason: verdict === "open" ? "unknown" : null,
    because: null,
    yesNo: false,
    people: false,
    reserve: 1.2,
    margin: { nominal: 0.514, low: 0.374, high: 0.588 },
    demand: side(torque(10.934, 10.1, 11.8)),
    capacity: side(torque(5.6149, 4.1, 6.4)),
    near: false,
    estimated: false,
    deciders: [],
    restsOn: [],
    remedies: [],
    ...more,
  };
}

function answerOf(checks: readonly CheckAnswer[], measureNext: Answer["measureNext"] = []): Answer {
  return {
    shop: "Test",
    show: { units: "metric", also: null, pressure: "bar", currency: "USD" },
    variant: [],
    machines: [],
    rooms: [],
    checks,
    notices: [],
    figures: {},
    inputs: {},
    findings: [],
    options: [],
    records: [],
    measureNext,
    mode: "full",
  };
}

function linesOf(
  checks: readonly CheckAnswer[],
  more: { cures?: ReadonlyMap<string, Cures>; next?: Answer["measureNext"]; width?: number } = {},
): string[] {
  const t = terminal(more.width);
  const page = pageFor(t);
  const answer = answerOf(checks, more.next);
  addRoomBrief(page, t, checks, { answer, cures: more.cures ?? null, measureAt: measureNumbers(answer) });
  return page.lines;
}

test("a check that fails says what it wants and what it has, in three figures, the unit once beside its band", () => {
  expect(linesOf([checkOf("fails")], { width: 100 })).toEqual([
    "  ■ fails  lathe: Does it turn?",
    "           0.51 (0.37 to 0.59): wants 10.9 N·m (10.1 to 11.8), has 5.61 N·m (4.1 to 6.4)",
  ]);
});

test("where both bands do not fit, that of the demand goes first: the margin has both in it", () => {
  expect(linesOf([checkOf("fails")])[1]).toBe("           0.51 (0.37 to 0.59): wants 10.9 N·m, has 5.61 N·m (4.1 to 6.4)");
  expect(linesOf([checkOf("fails")], { width: 60 })[1]).toBe("           0.51 (0.37 to 0.59): wants 10.9 N·m, has 5.61 N·m");
});

test("what holds is counted, whatever its number", () => {
  expect(linesOf([checkOf("holds"), checkOf("holds")])).toEqual(["  ● holds  2 checks; --all shows them"]);
  expect(linesOf([checkOf("holds")])).toEqual(["  ● holds  1 check; --all shows it"]);
});

test("of several cuts that fail alike the worst is told and the others named", () => {
  const cuts = ["knob rough", "nut form", "shaft face", "shaft drill", "shaft thread"].map((thing) => checkOf("fails", { thing }));
  const lines = linesOf(cuts, { width: 140 });
  expect(lines).toHaveLength(3);
  expect(lines[0]).toContain("lathe knob rough: ");
  expect(lines[2]).toBe(
    "           likewise nut form 0.51 (0.37 to 0.59), shaft face 0.51 (0.37 to 0.59), shaft drill 0.51 (0.37 to 0.59) and 1 more",
  );
});

test("another verdict on the same question stands by itself", () => {
  const lines = linesOf([checkOf("fails", { thing: "knob rough" }), checkOf("open", { thing: "nut form" })]);
  expect(lines.filter((l) => l.includes("Does it turn?"))).toHaveLength(2);
});

const kindUnknown: Partial<CheckAnswer> = {
  reason: "incomplete",
  because: "kind of motor is not known",
  margin: { nominal: { refused: "x" }, low: { refused: "x" }, high: { refused: "x" } },
  demand: null,
  deciders: [
    { input: "lathe/spindle.motor.kind", says: "kind of motor is not known", measure: "Read the plate. Count the leads.", share: 1 },
  ],
};

test("checks that one reading settles stand together, and the list says once how it is taken", () => {
  const checks = [
    checkOf("open", { ...kindUnknown, id: "spindle.a" }),
    checkOf("open", { ...kindUnknown, id: "spindle.b", asks: "Is it right?" }),
  ];
  const next = checks[0]?.deciders.map((d) => ({ ...d, checks: checks.map((c) => c.address) })) ?? [];
  expect(linesOf(checks, { next })).toEqual([
    "  ○ open   lathe: Does it turn?",
    "  ○ open   lathe: Is it right?",
    "           kind of motor is not known: see 1 below",
  ]);
  const page = pageFor(terminal(120));
  addMeasureNext(page, terminal(120), answerOf(checks, next), () => [{ decl: "hazard", id: "mains", name: "Mains", says: "Lock off." }]);
  expect(page.lines).toEqual([
    "Measure next",
    "  1.  kind of motor (lathe/spindle.motor.kind). Read the plate. Count the leads. Caution: mains. Decides spindle.a and",
    "      spindle.b.",
    "  Caution, mains: Lock off.",
  ]);
});

test("an open check with a number names the reading and its share of the spread", () => {
  const decider = { input: "lathe/kc", says: "cutting force", measure: "Three cuts.", share: 0.331 };
  const lines = linesOf([checkOf("open", { deciders: [decider] })], { next: [{ ...decider, checks: [] }] });
  expect(lines.at(-1)).toBe("           see 1 below: cutting force, 33 % of the spread");
});

test("a verdict that rests on a window names the check that does not bear it out", () => {
  const rests = {
    reason: "rests-on",
    because: "rests on enough voltage",
    restsOn: [{ says: "enough voltage", guard: "lathe/supply.held" }],
  } as const;
  const lines = linesOf([checkOf("open", rests)], { width: 160 });
  expect(lines[1]).toContain("; rests on enough voltage, which lathe/supply.held does not bear out");
});

const tried = (verdict: Tried["verdict"], nominal: number, better: boolean | null = true): Tried => ({
  verdict,
  yesNo: false,
  margin: { nominal, low: nominal, high: nominal },
  better,
  worsens: [],
});
const remedy = (does: string): CheckAnswer["remedies"][number] => ({ does, costs: "", changes: [], lay: null });

test("what lifts the verdict is shown, best first, and what only moves the number is left to --all", () => {
  const c = checkOf("fails", { remedies: [remedy("a choke"), remedy("less feed")] });
  const options = [
    { machine: "lathe", name: "bigger", ...tried("fails", 0.6) },
    { machine: "shop", name: "belt", ...tried("holds", 1.5) },
    { machine: "lathe", name: "worse", ...tried("fails", 0.1, false) },
  ];
  const lines = linesOf([c], { cures: new Map([[c.address, { options, remedies: [tried("tight", 1.1), null] }]]) });
  expect(lines.slice(2)).toEqual(["           option shop/belt: ● holds 1.50", "           remedy: a choke; then ▲ tight 1.10"]);
});

test("where nothing lifts the verdict, what moves the number is shown, and the remedies that no number stands for", () => {
  const c = checkOf("fails", { remedies: [remedy("less feed"), remedy("less depth"), remedy("another tool")] });
  const options = [{ machine: "lathe", name: "bigger", ...tried("fails", 0.6) }];
  const lines = linesOf([c], { cures: new Map([[c.address, { options, remedies: [null, null, null] }]]) });
  expect(lines.slice(2)).toEqual(["           option bigger: ■ fails 0.60", "           remedies: less feed; less depth"]);
});
