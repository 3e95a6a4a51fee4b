// Places along a range: evenly spaced or by equal ratios, the ends as typed.
import { expect, test } from "vitest";
import { type Places, placesOf } from "./places.ts";

const places = (...args: Parameters<typeof placesOf>): Places => {
  const read = placesOf(...args);
  if (typeof read === "string") throw new Error(read);
  return read;
};

test("even steps in the unit that was typed, ends included", () => {
  expect(places("10 to 30 in", "5", "linear", "length")).toEqual({
    unit: "in",
    x: [10, 15, 20, 25, 30],
    texts: ["10 in", "15 in", "20 in", "25 in", "30 in"],
  });
});

test("equal ratios on a logarithmic scale", () => {
  expect(places("1 to 1000 Hz", "4", "log", "frequency").x).toEqual([1, 10, 100, 1000]);
});

test("steps left out are enough for a curve", () => {
  expect(places("1 to 2 m", "", "linear", "length").x.length).toBeGreaterThan(30);
});

test.each([
  ["5 m", "", "linear", /no range/],
  ["5 to 60 kg", "", "linear", /length/],
  ["1 to 2 m", "1", "linear", /whole number/],
  ["1 to 2 m", "2.5", "linear", /whole number/],
  ["1 to 2 m", "100000", "linear", /whole number/],
  ["0 to 2 m", "", "log", /above 0/],
] as const)("%s in %j steps, %s, is refused in words", (range, steps, scale, says) => {
  expect(placesOf(range, steps, scale, "length")).toMatch(says);
});
