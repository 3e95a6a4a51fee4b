import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "./run.ts";

let place = "";
beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "waywright-run-"));
  const put = (path: string, text: string): void => {
    mkdirSync(dirname(join(place, path)), { recursive: true });
    writeFileSync(join(place, path), text);
  };
  const machine = (name: string): string =>
    `machine: ${name}\nkind: turret-lathe\nsupply: { run: { length: 20 m, size: 6 mm2, ampacity: 20 A } }\n`;
  put("shop/shop.yaml", "waywright: 1\nshop: Test\nsupply: { kind: single-phase, voltage: 230 V, rating: 63 A, existing: 2 A }\n");
  put("shop/lathe/machine.yaml", machine("Lathe"));
  put("shop/mill/machine.yaml", machine("Mill"));
  for (const m of ["lathe", "mill"])
    put(`shop/${m}/options/long-run.yaml`, "option: long-run\ntitle: Longer\nset:\n  supply.run.length: 60 m\n");
  put("other/shop.yaml", "waywright: 1\nshop: Other\n");
  // 6 kW at 230 V are 26 A on a run that may carry 20 A; moved far away it may carry them, and little voltage is left.
  put(
    "oven/shop.yaml",
    "waywright: 1\nshop: Oven\nsupply: { kind: single-phase, voltage: 230 V +/- 2 %, rating: 63 A, existing: 2 to 5 A }\n",
  );
  put(
    "oven/lathe/machine.yaml",
    "machine: Lathe\nkind: turret-lathe\nsupply:\n  run: { length: 20 m, size: 6 mm2, ampacity: 20 A }\n  loads:\n    oven: { power: 6 kW, share: 100 % }\n  transformer: none\n",
  );
  put("oven/lathe/options/far.yaml", "option: far\ntitle: Far\nset:\n  supply.run.length: 90 m\n  supply.run.ampacity: 50 A\n");
  put("oven/lathe/options/near.yaml", "option: near\ntitle: Near\nset:\n  supply.run.length: 5 m\n  supply.run.ampacity: 50 A\n");
  put("empty/nothing.txt", "");
  put("volts.csv", "when,line/V\n7:00,230\n8:00,none\n");
  put("cases.json", "{}");
  put("answers.yaml", "voltage: 240 V\n");
  put("list.yaml", "- voltage\n");
  put("torn.yaml", "voltage: [\n");
});
afterAll(() => rmSync(place, { recursive: true }));

async function started(words: readonly string[], unicode = true): Promise<{ status: number; out: string; err: string }> {
  let [out, err] = ["", ""];
  const terminal = {
    width: 80,
    colour: false,
    unicode,
    asks: false,
    out: (s: string) => void (out += s),
    err: (s: string) => void (err += s),
  };
  const status = await run(words, terminal, place);
  return { status, out, err };
}

const sweep = ["sweep", "shop", "lathe/supply.run.length"];
test.each([
  [["chek"], "command-unknown"],
  [["check", "--quik"], "option-unknown"],
  [["check"], "folder-missing"],
  [["check", "nowhere"], "folder-missing"],
  [["check", "empty"], "folder-missing"],
  [["check", "shop", "other"], "argument-extra"],
  [["check", "shop", "--machine", "lath"], "machine-unknown"],
  [["check", "shop", "--option", "long-rn"], "name-unknown"],
  [["check", "shop", "--option", "long-run"], "name-ambiguous"],
  [["explain", "shop"], "argument-missing"],
  [["explain", "shop", "supply.drop"], "name-ambiguous"],
  [["explain", "shop", "supply.dorp"], "name-unknown"],
  [["explain", "shop", "lathe/supply.drop", "x"], "name-unknown"],
  [["explain", "shop", "lathe/supply.drop", "--depth", "-1"], "argument-bad"],
  [["work"], "argument-missing"],
  [["work", "supply.nope"], "figure-unknown"],
  [["work", "supply.unbalance"], "needs-missing"],
  [["work", "supply.unbalance", "V_i"], "argument-bad"],
  [["work", "supply.unbalance", "V_i="], "argument-missing"],
  [["work", "supply.unbalance", "V_i=230 V", "V_i=230 V"], "argument-extra"],
  [["work", "supply.unbalance", "V_i=230 A"], "unit-mismatch"],
  [["work", "supply.unbalance", "V_i=@volts.csv:line"], "file-bad"],
  [["work", "supply.unbalance", "V_i=@none.csv"], "file-missing"],
  [["work", "--cases", "none.json"], "file-missing"],
  [["work", "--cases", "cases.json"], "file-bad"],
  [["work", "--cases", "cases.json", "supply.unbalance"], "argument-extra"],
  [["compare", "shop"], "argument-missing"],
  [["compare", "shop", "lathe/nope"], "name-unknown"],
  [[...sweep, "10 to 50 m"], "argument-missing"],
  [[...sweep, "10 m", "supply.drop"], "argument-bad"],
  [[...sweep, "10 to 50 A", "supply.drop"], "argument-bad"],
  [[...sweep, "10 to 50 m", "supply.drop", "--steps", "1"], "argument-bad"],
  [["sweep", "shop", "lathe/supply.run.lenght", "10 to 50 m", "supply.drop"], "name-unknown"],
  [["sweep", "shop", "lathe/supply.run.material", "10 to 50 m", "supply.drop"], "argument-bad"],
  [["new"], "argument-missing"],
  [["new", "made"], "argument-missing"],
  [["new", "empty", "--from", "answers.yaml"], "folder-taken"],
  [["new", "made", "--from", "none.yaml"], "file-missing"],
  [["new", "made", "--from", "list.yaml"], "file-bad"],
  [["new", "made", "--from", "torn.yaml"], "file-bad"],
  [["open", "shop", "--port", "70000"], "argument-bad"],
  [["help", "chek"], "command-unknown"],
  [["completion", "tcsh"], "argument-bad"],
])("%j has status 2, says %s, and prints nothing else", async (words, code) => {
  const plain = await started(words);
  expect([plain.status, plain.out]).toEqual([2, ""]);
  expect(plain.err).toMatch(new RegExp(`^${code}: `));
  const asJson = await started([...words, "--json"]);
  expect([asJson.status, asJson.err]).toEqual([2, ""]);
  expect(JSON.parse(asJson.out)).toMatchObject({ error: { code } });
});

test("an option of one machine is named by its folder where another has it too", async () => {
  const { out } = await started(["explain", "shop", "lathe/supply.run.length", "--option", "lathe/long-run"]);
  expect(out).toContain("value: 60 m");
});

test("what a terminal cannot show is written in ASCII, JSON excepted", async () => {
  const { out } = await started(["explain", "shop", "shop/supply.capacity"], false);
  expect(out).not.toMatch(/[^\n -~]/);
});

test("an option that cures one check and breaks another says so, and comes behind one that breaks nothing", async () => {
  const { out } = await started(["check", "oven"]);
  expect(out).toMatch(
    /fails {2}lathe: Does the run carry.*\n.*\n {11}option near: .*\n {11}option far: ● holds .*, worsens supply\.voltage-at-machine-held\n/,
  );
  expect(out).toMatch(/What the options worsen\n {2}far: supply\.voltage-at-machine-held ○ open 0\.99, then ■ fails 0\.\d+\n/);
  const { out: one } = await started(["explain", "oven", "supply.run-carries"]);
  expect(one.replaceAll(/\s+/g, " ")).toMatch(/option far: ● holds .*; worsens supply\.voltage-at-machine-held ■ fails/);
});
