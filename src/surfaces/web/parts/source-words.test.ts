// Every value shows where it is from, in a word.
import { expect, test } from "vitest";
import type { OriginAnswer } from "../../../kernel/answer.ts";
import { sourceWords } from "./source-words.ts";

const place = { file: "lathe/machine.yaml", line: 8, column: 1, endLine: 1, endColumn: 2 };
const cases: [OriginAnswer, string | null, string, string][] = [
  [{ by: "line", says: "plate, lathe/machine.yaml:8", place }, "7.5 hp", "plate", "plate"],
  [{ by: "line", says: "local-code, lathe/machine.yaml:8", place }, "40 A", "local-code", "local code"],
  [{ by: "line", says: "lathe/machine.yaml:8", place }, "18 m", "typed", "file"],
  [{ by: "given", says: "given" }, "18 m", "typed", "given"],
  [{ by: "record", says: "record 2026-02-14-motor-resistance", name: "2026-02-14-motor-resistance" }, "1.71 ohm", "measured", "record"],
  [{ by: "option", says: "option more-air", name: "more-air" }, "200 L", "option", "option more-air"],
  [{ by: "option", says: "tried out, not written", name: "tried" }, "8 hp", "typed", "typed, not kept"],
  [{ by: "catalogue", says: "catalogue spindle-drive-11" }, "11 A", "catalogue", "catalogue"],
  [{ by: "typical", says: "typical: practice (unchecked)", unchecked: true }, null, "typical", "typical, unchecked"],
  [{ by: "typical", says: "typical: IEC 60038" }, "unknown", "dont-know", "don't know"],
  [{ by: "estimate", says: "two voltages at two loads" }, null, "typical", "estimated"],
];

test.each(cases)("%j, written %j, is marked %s and called %s", (origin, written, icon, word) => {
  expect(sourceWords(origin, written)).toEqual({ icon, word });
});
