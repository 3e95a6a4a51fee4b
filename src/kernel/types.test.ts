// Misuses that the compiler has to refuse: each line below an expectation is an error, or the build fails.
import { expect, test } from "vitest";
import { figure, input, joint, simulated } from "./figure.ts";
import { machine } from "./item.ts";
import { job } from "./job.ts";
import { listSlot, offer, slot } from "./slot.ts";

const base = { key: "p", per: machine, says: "p", measure: "look at it" } as const;
const pressure = input({ ...base, unit: "Pa", kind: "gauge-pressure" });
const length = input({ ...base, unit: "m" });
const words = { per: machine, symbol: "F", says: "", source: "" } as const;

test("a pressure says what it is counted from", () => {
  // @ts-expect-error Pa may be gauge, absolute or a difference.
  input({ ...base, unit: "Pa" });
  expect(pressure.kind).toBe("gauge-pressure");
});

test("a kind has its own unit", () => {
  // @ts-expect-error A gauge pressure is not in metres.
  input({ ...base, unit: "m", kind: "gauge-pressure" });
  // @ts-expect-error There is no such unit.
  expect(() => input({ ...base, unit: "litres" })).toThrow("unit-unknown");
  expect(length.kind).toBe("length");
});

test("a formula in code reads only what it needs", () => {
  // @ts-expect-error q is no need.
  const f = figure({ ...words, id: "toy.f", unit: "N", formula: "p", needs: { p: pressure }, of: (x) => x.q });
  expect(f.decl).toBe("figure");
});

test("a sign belongs to a need", () => {
  // @ts-expect-error q is no need.
  figure({ ...words, id: "toy.f", unit: "N", formula: "p", needs: { p: pressure }, of: (x) => x.p, signs: { q: "+" } });
  // @ts-expect-error A figure has a formula or a method.
  const f = figure({ ...words, id: "toy.f", unit: "N", needs: { p: pressure }, of: (x) => x.p });
  expect(f.decl).toBe("figure");
});

test("a joint value has the members it gives", () => {
  const circuit = joint({
    id: "toy.c",
    per: machine,
    says: "",
    method: "",
    source: "",
    needs: { p: pressure },
    gives: { R: { symbol: "R", unit: "ohm", says: "" } },
    of: (_, draw) => ({ R: new Float64Array(draw.count) }),
    readings: [],
  });
  // @ts-expect-error X is no member.
  expect(circuit.X).toBeUndefined();
  expect(circuit.R.part).toBe("R");
});

test("a brief is what its job reads", () => {
  const run = job<{ p: number }, number>({ id: "toy.j", version: 1, run: (b) => b.p });
  const s = {
    ...words,
    id: "toy.s",
    unit: "N",
    method: "",
    needs: { p: pressure },
    job: run,
    read: (r: number) => r,
    tolerance: 0.01,
  } as const;
  // @ts-expect-error The job knows no q.
  simulated({ ...s, brief: (x) => ({ q: x.p }) });
  expect(simulated({ ...s, brief: (x) => ({ p: x.p }) }).decl).toBe("simulated");
});

test("a slot of numbers takes numbers, a list slot what it lists", () => {
  const sum = slot({ id: "toy.sum", per: machine, says: "", combine: "sum", empty: "zero", unit: "m" });
  const lists = listSlot<readonly number[]>({ id: "toy.lists", per: machine, says: "", empty: "zero" });
  // @ts-expect-error A list slot of lists takes no number.
  offer(lists, length);
  expect(offer(sum, length).to).toBe(sum);
});
