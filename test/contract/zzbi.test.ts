import { test } from "vitest";
import { study } from "../../src/kernel/study.ts";
import { asFound } from "../../src/kernel/model/node.ts";
import { waywright } from "../../src/rooms/index.ts";
import { example } from "./house.ts";
test("base", () => {
  const t = performance.now();
  const s = study(waywright, example, asFound, "nominal");
  console.log(performance.now() - t);
  JSON.stringify(s.answer);
  for (const f of s.answer.findings) console.log(`${f.place.file}:${f.place.line}:${f.place.column} ${f.code}: ${f.says}\n${f.excerpt}`);
  for (const n of s.answer.notices) console.log(n.severity, n.at, n.says);
});
