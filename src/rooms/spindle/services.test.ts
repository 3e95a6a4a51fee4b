// The spindle on services and plates unlike those of the example: one phase of three, one voltage on the plate, other motors.
import { expect, test } from "vitest";
import { asFound } from "../../kernel/model/node.ts";
import { parseShop } from "../../kernel/model/shop.ts";
import { type Study, study } from "../../kernel/study.ts";
import { bench, expectNear, worked } from "./bench.test-help.ts";

const plate = "plate: { power: 2.2 kW, voltage: 230/400 V, current: 8.6/5.0 A, frequency: 50 Hz, speed: 1430 rpm }, leads: 6";
const belts = "belts: { only: { motor-pulley: 100 mm, spindle-pulley: 100 mm, centre: 400 mm } }\n  highest-speed: 2000 rpm";
const machine = (motor: string, drive: string, more = "") => `machine: a mill
kind: knee-mill
${more}spindle:
  motor: { ${motor} }
  drive: { ${drive} }
  ${belts}
`;
const star = "kind: three-phase-star, voltage: 400 V, rating: 32 A, existing: 2 A, source: { resistance: 0.3 ohm, inductance: 0.2 mH }";
function shop(supply: string, mill: string): Study {
  const files = { "shop.yaml": `waywright: 1\nshop: bench\nsupply: { ${supply} }\n`, "mill/machine.yaml": mill };
  const parsed = parseShop(new Map(Object.entries(files).map(([file, text]) => [file, { text }])), bench.keys);
  return study(bench, parsed, asFound, "quick");
}
/** Nominal value of a figure of the mill; NaN where it has none. */
function at(s: Study, address: string): number {
  const cell = s.graph.cells.get(address);
  const column = cell && s.evaluation.filled.get(cell);
  return column && "v" in column ? (column.v[0] ?? NaN) : NaN;
}

test("a drive for one phase on 230/400 V stands between a line and the neutral, there and back through two conductors", () => {
  const s = shop(star, machine(`kind: induction, ${plate}, connected: delta`, "rated-current: 11 A, input-phases: 1"));
  const offered = at(s, "mill/supply.voltage-offered");
  expectNear(at(s, "mill/spindle.drive.feed-voltage"), offered / Math.sqrt(3), 1e-12);
  expectNear(at(s, "mill/spindle.drive.feed-resistance"), 0.6, 1e-12);
  expectNear(at(s, "mill/spindle.drive.feed-inductance"), 0.4e-3, 1e-12);
  // So its bus cannot reach what 400 V would give a winding linked for 230 V.
  expect(at(s, "mill/spindle.drive.output-voltage-max")).toBeLessThan(offered / Math.sqrt(3));
});

test("on 208 V of a star the same drive stands between two lines, since the neutral would give it 120 V", () => {
  const s = shop(
    star.replace("400 V", "208 V"),
    machine(`kind: induction, ${plate}, connected: delta`, "rated-current: 11 A, input-phases: 1"),
  );
  expect(at(s, "mill/spindle.drive.feed-voltage")).toBe(at(s, "mill/supply.voltage-offered"));
});

test("what the papers say of the feed goes before what is usual", () => {
  const s = shop(star, machine(`kind: induction, ${plate}, connected: star`, "rated-current: 6 A, input-phases: 1, fed: line-to-line"));
  expect(at(s, "mill/spindle.drive.feed-voltage")).toBe(at(s, "mill/supply.voltage-offered"));
});

test("a load on one phase of three fills its line as if all three carried its current", () => {
  const s = shop(star, machine(`kind: induction, ${plate}, connected: delta`, "rated-current: 11 A, input-phases: 1"));
  const I = at(s, "mill/spindle.peak-line-current");
  expectNear(at(s, "mill/spindle.draw"), Math.sqrt(3) * at(s, "mill/supply.voltage-offered") * I, 1e-12);
});

test("one voltage on the plate and links for a lower one are no answer: 400 V in delta may be 400 V or 231 V", () => {
  const one = "plate: { power: 2.2 kW, voltage: 400 V, current: 5.0 A, frequency: 50 Hz, speed: 1430 rpm }, leads: 6";
  const of = (connected: string) =>
    at(shop(star, machine(`kind: induction, ${one}, connected: ${connected}`, "input-phases: 3")), "mill/spindle.motor.rated-voltage");
  expect(of("delta")).toBeNaN();
  expect(of("star")).toBe(400);
});

test("a dc and a servo spindle fill the service too, and coast down by a friction of their own torque", () => {
  const dc = "kind: dc, plate: { power: 3 kW, speed: 1750 rpm }, armature: { voltage: 180 V, current: 20 A, resistance: 0.5 ohm }";
  const one = shop("kind: split-phase, voltage: 240 V, rating: 60 A, existing: 5 A", machine(dc, "rated-current: 25 A"));
  // Form factor 1.25 in the middle of its band.
  expectNear(at(one, "mill/spindle.draw"), at(one, "mill/supply.voltage-offered") * 20 * 1.25, 1e-9);
  expect(at(one, "mill/supply.load")).toBe(at(one, "mill/spindle.draw"));
  expect(at(one, "mill/spindle.coast-time")).toBeGreaterThan(0);
  const servo = "kind: servo, torque: 10 N*m, highest-speed: 3000 rpm, inertia: 0.004 kg*m2";
  const three = shop(star, machine(servo, "input-phases: 3, efficiency: 96 %"));
  expectNear(at(three, "mill/spindle.draw"), (10 * 100 * Math.PI) / (0.96 * 0.63), 1e-9);
  expect(at(three, "mill/spindle.coast-time")).toBeGreaterThan(0);
});

test("a spindle that draws nothing yet leaves the mean of the others as it is", () => {
  const s = shop(
    star,
    "machine: a mill\nkind: knee-mill\nsupply: { loads: { cabinet: { power: 200 W, share: 50 % } } }\nspindle: { highest-speed: 2000 rpm }\n",
  );
  expectNear(at(s, "shop/supply.demand"), 100, 1e-12);
});

test("a short ramp asks more of the bus than light cuts, a long one no more than friction does", () => {
  const of = (t: string) =>
    worked("spindle.ramp-bus-power", {
      T: "20 N*m",
      w_b: "150 rad/s",
      w: "300 rad/s",
      J: "0.1 kg*m2",
      T_f: "2 N*m",
      t,
      eta_m: "0.8",
      eta_d: "0.95",
    });
  expectNear(of("1 s"), (20 * 150) / (0.8 * 0.95), 1e-12); // all the torque there is: (0.1 * 300 + 2) * 300 would be 9.6 kW
  expectNear(of("10 s"), ((0.1 * 300) / 10 + 2) * (300 / (0.8 * 0.95)), 1e-12);
});

test("a pump for three phases counts with the root of three, whatever feeds its machine", () => {
  const pump = (phases: string) =>
    `machine: a mill\nkind: knee-mill\nfluids: { coolant: { pump: { motor: { kind: induction, plate: { power: 0.75 kW, voltage: 230 V, current: 3.2 A, ${phases}frequency: 60 Hz, speed: 1720 rpm } } } } }\n`;
  const split = "kind: split-phase, voltage: 240 V, rating: 60 A, existing: 5 A";
  expectNear(at(shop(split, pump("")), "mill/supply.load"), Math.sqrt(3) * 230 * 3.2, 1e-9);
  expectNear(at(shop(split, pump("phases: 1, ")), "mill/supply.load"), 230 * 3.2, 1e-9);
});

test("a pump for one phase on 230/400 V is asked for the neutral's volts and saturates nothing", () => {
  const of = (phases: string) =>
    shop(
      star,
      `machine: a mill\nkind: knee-mill\nfluids: { coolant: { pump: { motor: { kind: induction, plate: { power: 0.1 kW, voltage: 230 V, current: 0.9 A, ${phases}frequency: 50 Hz, speed: 2800 rpm } } } } }\n`,
    ).answer.notices.filter((n) => n.says.includes("the iron saturates"));
  expect(of("phases: 1, ")).toEqual([]);
  expect(of("")).toHaveLength(1);
});

test("an edge filter holds edges to one and a half times the bus, a sine filter leaves none", () => {
  const of = (filter: string) =>
    worked("spindle.motor.insulation-stress", { V_dc: "800 V", l: "50 m", l_c: "20 m", ...(filter ? { filter } : {}) });
  expect([of(""), of("edge"), of("sine")]).toEqual([1600, 1200, 800]);
});
