// A bench for tests: the house up to this room, figures worked out from values alone, and a small shop of one machine.
import { expect } from "vitest";
import type { Mode } from "../../kernel/evaluate.ts";
import { type House, house } from "../../kernel/house.ts";
import { asFound } from "../../kernel/model/node.ts";
import { parseShop } from "../../kernel/model/shop.ts";
import { type Study, study } from "../../kernel/study.ts";
import { workOut } from "../../kernel/work.ts";
import { ground } from "../ground/index.ts";
import { supply } from "../supply/index.ts";
import { spindle } from "./index.ts";

const metric = { units: "metric" } as const;
/** The house as far as this room: what later rooms read is let pass. */
export const bench: House = house([ground, supply, spindle], {
  shop: [],
  machine: ["work.*", "tools.*"],
  catalogue: ["inserts.*", "materials.*"],
});

/** The nominal value [SI] of one figure worked out from texts as a user types them. */
export function worked(id: string, given: Readonly<Record<string, string>>): number {
  const got = workOut(bench, id, given, metric);
  if ("code" in got) throw new Error(`${id}: ${got.code}: ${got.message}`);
  return got.column.v[0] ?? Number.NaN;
}

/** Why a figure has no value. */
export function refused(id: string, given: Readonly<Record<string, string>>): { code: string; message: string } {
  const got = workOut(bench, id, given, metric);
  if (!("code" in got)) throw new Error(`${id} has a value: ${String(got.column.v[0])}`);
  return { code: got.code, message: got.message };
}

/** The value within a share of a reference. */
export function expectNear(value: number, reference: number, tolerance: number): void {
  expect(Math.abs(value / reference - 1), `${value} against ${reference}`).toBeLessThanOrEqual(tolerance);
}

const shopFile = "waywright: 1\nshop: bench\nsupply: { kind: split-phase, voltage: 240 V, rating: 60 A, existing: 10 A }\n";

/** A shop of one machine called lathe, from the texts of its files. */
export function shopOf(machine: string, more: Readonly<Record<string, string>> = {}, mode: Mode = "quick"): Study {
  const files = new Map(
    Object.entries({ "shop.yaml": shopFile, "lathe/machine.yaml": machine, ...more }).map(([file, text]) => [file, { text }]),
  );
  return study(bench, parseShop(files, bench.keys), asFound, mode);
}

/** One check of such a shop, by the end of its address. */
export function verdictOf(s: Study, address: string) {
  const found = s.answer.checks.find((c) => c.address.endsWith(address));
  if (!found) throw new Error(`no check ${address} among ${s.answer.checks.map((c) => c.address).join(", ")}`);
  return found;
}
