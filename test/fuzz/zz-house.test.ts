import { appendFileSync } from "node:fs";
import { test } from "vitest";
import { answered } from "./house.ts";
test("x", () => {
  const from = Number(process.env["FROM"] ?? 0), n = Number(process.env["N"] ?? 100), out = process.env["OUT"] ?? "/tmp/bi/fuzz.txt";
  let slow = [0, 0], clean = 0, total = 0; const seen = new Map<string, number>();
  for (let s = from; s < from + n; s++) {
    try {
      const o = answered(s, (process.env["MODE"] ?? "nominal") as never);
      total += o.seconds;
      if (o.errors === 0) clean++;
      if (o.seconds > slow[0]!) slow = [o.seconds, s];
      for (const x of o.slips) { const k = x.replace(/\(.*$/s, ""); if (!seen.has(k)) appendFileSync(out, `${s} ${o.errors} ${x}\n`); seen.set(k, (seen.get(k) ?? 0) + 1); }
    } catch (e) { appendFileSync(out, `${s} THROW ${(e as Error).stack?.split("\n").slice(0, 6).join(" | ")}\n`); }
    if ((s - from) % 100 === 99) appendFileSync(out, `-- ${s + 1 - from} done, clean ${clean}, mean ${(total / (s + 1 - from)).toFixed(3)}, slowest ${slow}\n`);
  }
}, 3e6);
