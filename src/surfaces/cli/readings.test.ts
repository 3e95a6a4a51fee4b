import { expect, test } from "vitest";
import { Misuse } from "./misuse.ts";
import { readingsOf } from "./readings.ts";

const leak = "time/s,pressure/bar,remark\n0,7.00,shut\n30,6.72,\n60,6.46,\n";

test("a column is named with or without its unit, and its unit goes with every reading", () => {
  expect(readingsOf(leak, "leak.csv", "pressure")).toBe("7.00 bar, 6.72 bar, 6.46 bar");
  expect(readingsOf(leak, "leak.csv", "pressure/bar")).toBe("7.00 bar, 6.72 bar, 6.46 bar");
});

test("without a name the first column of numbers is taken", () => {
  expect(readingsOf("what,\u00b0,x/mm\na,,1\nb,,2\n", "t.csv")).toBe("1 mm, 2 mm");
});

test("a byte order mark, CRLF, quotes, semicolons and a table without a head are read", () => {
  expect(readingsOf('\uFEFF"a, b/mm",c\r\n1,2\r\n\r\n3,4\r\n', "t.csv", "a, b")).toBe("1 mm, 3 mm");
  expect(readingsOf("x/mm;y\n1.5;2\n", "t.csv")).toBe("1.5 mm");
  expect(readingsOf("1,2\n3,4\n", "t.csv", "2")).toBe("2, 4");
});

test.each([
  ["time/s,p/bar\n0,7.0\n30,seven\n", "p", /t\.csv:3 /],
  ["time/s,p/bar\n0,7.0\n", "q", /has no column q/],
  ["a,b\nx,y\n", undefined, /no column of numbers/],
  ["a/mm\n", "a", /no readings/],
  ["", undefined, /empty/],
])("%j is refused with its line or its columns", (csv, column, says) => {
  let error: unknown;
  try {
    readingsOf(csv, "t.csv", column);
  } catch (e) {
    error = e;
  }
  expect(error).toBeInstanceOf(Misuse);
  expect(error).toMatchObject({ code: "file-bad", message: expect.stringMatching(says) as unknown });
});
