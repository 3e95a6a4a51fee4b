import { expect, test } from "vitest";
import { csv } from "./csv.ts";

test("a table starts with a byte-order mark, ends its lines with CRLF and quotes only what needs it (RFC 4180)", () => {
  const text = csv(
    ["speed [rpm]", "as found, all day [N·m]"],
    [
      [1000, 26.5],
      [2000, null],
      [3000, Number.NaN],
    ],
  );
  expect(text).toBe('\uFEFFspeed [rpm],"as found, all day [N·m]"\r\n1000,26.5\r\n2000,\r\n3000,\r\n');
});

test("quotes are doubled and a line break stays inside its cell", () => {
  expect(csv(["a"], [['1/2" bar'], ["two\nlines"]])).toBe('\uFEFFa\r\n"1/2"" bar"\r\n"two\nlines"\r\n');
});

test("a name that a spreadsheet would run as a formula stays a text, a negative number stays a number", () => {
  expect(
    csv(
      ["a", "b"],
      [
        ["=1+1", -5],
        ["-x", 0],
      ],
    ),
  ).toBe("\uFEFFa,b\r\n'=1+1,-5\r\n'-x,0\r\n");
});
