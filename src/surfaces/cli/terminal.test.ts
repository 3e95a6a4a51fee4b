import { expect, test } from "vitest";
import { hasColour, hasUnicode, inAscii, quantity, type Surroundings, toned, widthIn } from "./terminal.ts";

const around = (s: Partial<Surroundings>): Surroundings => ({ env: {}, platform: "linux", isTerminal: true, ...s });

test("colour is for terminals, and not where NO_COLOR is set", () => {
  expect(hasColour(around({}))).toBe(true);
  expect(hasColour(around({ isTerminal: false }))).toBe(false);
  expect(hasColour(around({ env: { NO_COLOR: "1" } }))).toBe(false);
  expect(hasColour(around({ env: { TERM: "dumb" } }))).toBe(false);
  expect(toned({ colour: false }, "fails", "fails")).toBe("fails");
});

test("lines have 80 columns at most, fewer on a narrow terminal", () => {
  expect(widthIn(around({ columns: 200 }))).toBe(80);
  expect(widthIn(around({ columns: 60 }))).toBe(60);
  expect(widthIn(around({ columns: 0 }))).toBe(80);
  expect(widthIn(around({ isTerminal: false, columns: 60 }))).toBe(80);
});

test("signs beyond ASCII are shown where the locale says UTF-8", () => {
  expect(hasUnicode(around({ env: { LANG: "en_GB.UTF-8" } }))).toBe(true);
  expect(hasUnicode(around({ env: { LANG: "en_GB.UTF-8", LC_ALL: "C" } }))).toBe(false);
  expect(hasUnicode(around({}))).toBe(false);
  expect(hasUnicode(around({ platform: "win32" }))).toBe(true);
});

test("in ASCII a quantity keeps its meaning", () => {
  expect(inAscii("30.2 N\u00b7m \u00b1 5 \u00b5m\u00b2, 20 \u00b0C")).toBe("30.2 N*m +/- 5 um2, 20 degC");
  expect(inAscii("\u001b[31m\u00e9\u5b57\u001b[0m")).toBe("\u001b[31me?\u001b[0m");
});

test("a quantity is set as in print, a word that begins like a unit is left alone", () => {
  expect(quantity({ unicode: true }, "680 uF")).toBe("680 µF");
  expect(quantity({ unicode: true }, "unknown")).toBe("unknown");
  expect(quantity({ unicode: false }, "680 uF")).toBe("680 uF");
});
