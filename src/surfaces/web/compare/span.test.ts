// Sliders run over what was typed, in the unit that was typed, in round steps.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { InputAnswer } from "../../../kernel/answer.ts";
import { readQuantity } from "../../../kernel/quantity.ts";
import { positionOf, rangeAround, type Span, spanOf, startText, textAt, usualRange } from "./span.ts";

const span = (text: string, kind: Parameters<typeof spanOf>[1]): Span => {
  const read = spanOf(text, kind);
  if (typeof read === "string") throw new Error(read);
  return read;
};

test("a range in feet runs in feet", () => {
  const feet = span("20 to 60 ft", "length");
  expect(feet).toMatchObject({ low: 20, high: 60, unit: "ft", step: 0.2, decimals: 1 });
  expect(textAt(33.4, feet)).toBe("33.4 ft");
});

test("a value typed in another unit stands at its place", () => {
  expect(positionOf("10 m", "length", span("20 to 60 ft", "length"))).toBeCloseTo(32.808, 3);
  expect(positionOf("10 kg", "length", span("20 to 60 ft", "length"))).toBeNull();
});

test("temperatures keep their zero", () => {
  const warm = span("10 to 40 degC", "temperature");
  expect([warm.low, warm.high, positionOf("68 degF", "temperature", warm)]).toEqual([10, 40, expect.closeTo(20, 6)]);
});

test("every place of a slider reads back as itself, within half a step", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
      fc.double({ min: 1.1, max: 50, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (low, times, part) => {
        const s = span(`${low} to ${low * times} N*m`, "torque");
        const at = s.low + part * (s.high - s.low);
        const back = positionOf(textAt(at, s), "torque", s);
        expect(Math.abs((back ?? Number.NaN) - at)).toBeLessThanOrEqual(s.step / 2 + 1e-9);
        expect((s.high - s.low) / s.step).toBeGreaterThanOrEqual(100 - 1e-6);
      },
    ),
  );
});

test("what is no range is said in words", () => {
  expect(spanOf("5 m", "length")).toMatch(/two ends/);
  expect(spanOf("5 to 60 kg", "length")).toMatch(/length/);
});

const input = (nominal: number, low: number, high: number): InputAnswer => ({
  address: "lathe/x",
  id: "x",
  room: "r",
  item: "lathe",
  key: "x",
  says: "x",
  form: "quantity",
  kind: "length",
  words: [],
  written: null,
  text: "",
  origin: { by: "line", says: "" },
  over: [],
  measure: "",
  required: false,
  amount: { nominal, low, high, unit: "m", kind: "length", text: "", band: "" },
});

test("an unknown is tried over its band, an exact value from half of it to half more, nothing over nothing", () => {
  expect(usualRange(input(0.1, 0.09, 0.11), { units: "metric" })).toBe("90 to 110 mm");
  const read = readQuantity(usualRange(input(0.2, 0.2, 0.2), { units: "metric" }) ?? "", "length");
  expect(read.ok && [read.low, read.high]).toEqual([expect.closeTo(0.1, 9), expect.closeTo(0.3, 9)]);
  expect(usualRange(input(0, 0, 0), { units: "metric" })).toBeNull();
  expect(startText(input(0.1, 0.09, 0.11), { units: "inch" })).toBe("3.937 in");
});

test("around a typed value the range is in its own unit", () => {
  expect(rangeAround("16 in", "length")).toBe("8 to 24 in");
  expect(rangeAround("90 to 110 mm", "length")).toBe("90 to 110 mm");
  expect(rangeAround("0 mm", "length")).toBeNull();
  expect(rangeAround("unknown", "length")).toBeNull();
});
