// The program as a user starts it: words in, texts and exit status out. Figures and verdicts have their own tests; here it is what is printed where.
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { stripVTControlCharacters } from "node:util";
import { widthOf } from "../../src/surfaces/cli/text.ts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const bin = fileURLToPath(new URL("../../bin/waywright.mjs", import.meta.url));
const heron = fileURLToPath(new URL("../../examples/heron", import.meta.url));

let place = "";
const at = (path: string): string => join(place, path);
function put(path: string, text: string): void {
  mkdirSync(dirname(at(path)), { recursive: true });
  writeFileSync(at(path), text);
}

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "waywright-cli-"));
  const shop =
    "waywright: 1\nshop: Test shop\nsupply:\n  kind: single-phase\n  voltage: 230 V +/- 2 %\n  rating: 63 A\n  existing: 2 to 5 A\n";
  const machine = (power: string): string =>
    `machine: Test machine\nkind: turret-lathe\nsupply:\n  run: { length: 20 m, size: 6 mm2, ampacity: 20 A, protection: { rating: 20 A, let-through: 5000 A2*s } }\n  loads:\n    oven: { power: ${power}, share: 100 % }\n  transformer: none\n`;
  // 6 kW at 230 V are 26 A or more, on a run that may carry 20 A.
  put("fails/shop.yaml", shop);
  put("fails/lathe/machine.yaml", machine("6 kW"));
  put(
    "fails/lathe/options/small-oven.yaml",
    "option: small-oven\ntitle: Smaller oven\ncost: 90 USD\nhours: 2 h\nset:\n  supply.loads.oven.power: 1 kW\n",
  );
  put("fails/lathe/options/thick-run.yaml", "option: thick-run\ntitle: Thicker run\ncost: 240 USD\nset:\n  supply.run.ampacity: 50 A\n");
  put(
    "fails/lathe/options/long-run.yaml",
    "option: long-run\ntitle: Moved to the far corner\nneeds: [ thick-run ]\nset:\n  supply.run.length: 60 m\n",
  );
  put("two/shop.yaml", shop);
  put("two/lathe/machine.yaml", machine("1 kW"));
  put("two/mill/machine.yaml", machine("1 kW"));
  put("wrong/shop.yaml", shop.replace("230 V +/- 2 %", "230 A"));
  put("wrong/lathe/machine.yaml", machine("1 kW"));
  mkdirSync(at("empty"));
});
afterAll(() => rmSync(place, { recursive: true }));

interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}
function run(words: readonly string[], { cwd = place, env = {} }: { cwd?: string; env?: Record<string, string> } = {}): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...words], {
    cwd,
    encoding: "utf8",
    env: { ...process.env, LC_ALL: "C.UTF-8", ...env },
  });
  return { status, out: stdout, err: stderr };
}
// What a program reads: types are asserted by the expectations on it.
const parsed = (r: Ran): Record<string, never> => JSON.parse(r.out) as Record<string, never>;
const widest = (text: string): number => Math.max(...text.split("\n").map(widthOf));
const runCheck = "lathe/supply.run-carries";

describe("check", () => {
  test("a run that must carry more than it may fails, with status 1, its remedies and the option that cures it", () => {
    const r = run(["check", "fails"]);
    expect(r.status).toBe(1);
    expect(r.out).toMatch(/^Test shop: of \d+ checks 1 fails/);
    expect(r.out).toMatch(/■ fails {2}lathe: Does the run carry[^\n]*\n {11}0\.\d\d \(.*\): wants 2\d\.\d A.*, has 20 A\n/);
    expect(r.out).toMatch(/option small-oven: ● holds \d/);
    expect(r.out).not.toMatch(/\bsafe\b/i);
  });

  test("the example is read on two screens; each check in full, with its address, stands in --all", () => {
    const [brief, all] = [run(["check", heron]).out, run(["check", heron, "--all", "--quick"]).out];
    expect(brief.split("\n").length).toBeLessThan(160);
    expect(brief).toMatch(/● holds {2}\d+ checks; --all shows them/);
    expect(brief).not.toContain("lathe/spindle.work/spool-shaft.operations.finish.cut.torque-holds");
    expect(all).toContain("lathe/spindle.work/spool-shaft.operations.finish.cut.torque-holds");
    expect(all).toMatch(/remedy: /);
    expect(brief + all).not.toMatch(/\bsafe\b/i);
  });

  test("without --json no figure is listed, with it all are", () => {
    const answer = parsed(run(["check", "two", "--json", "--quick"])) as unknown as { figures: object };
    expect(Object.keys(answer.figures)).toContain("lathe/supply.loop-resistance");
  });

  test("with the option laid over nothing fails, and the status is 0", () => {
    const r = run(["check", "fails", "--option", "small-oven"]);
    expect(r.status).toBe(0);
    expect(r.out).toContain("with small-oven laid over");
  });

  test("a mistake in the files comes first, with its place and status 2", () => {
    const r = run(["check", "wrong"]);
    expect(r.status).toBe(2);
    expect(r.out).toMatch(/^Test shop: [^\n]*\n1 mistake in the files: [^\n]*\n(?:[^\n]+\n)*\nshop\.yaml:5:12 unit-mismatch: /); // before any note
    expect(r.out.split("\n").some((l) => /^ +\^+$/.test(l))).toBe(true);
  });

  test("as JSON there is nothing else on the output, and keys are sorted", () => {
    const r = run(["check", "fails", "--json"]);
    const answer = parsed(r);
    expect(r.status).toBe(1);
    expect(Object.keys(answer)).toEqual(Object.keys(answer).toSorted());
    expect(answer).toMatchObject({ status: 1, counts: { fails: 1 }, cures: { [runCheck]: { options: expect.any(Array) as unknown } } });
    expect(r.out).toBe(run(["check", "fails", "--json"]).out);
  });

  test("rooms and checks stand in the order of the low end of their margin", () => {
    const answer = parsed(run(["check", "two", "--json"])) as unknown as { checks: { margin: { low: unknown } }[] };
    const lows = answer.checks.map((c) =>
      typeof c.margin.low === "number" ? c.margin.low : JSON.stringify(c.margin.low).includes("never") ? Infinity : 0,
    );
    expect(lows.length).toBeGreaterThan(2);
    expect(lows).toEqual(lows.toSorted((a, b) => a - b));
  });

  test("the shop is found upward, a machine by its folder or by name", () => {
    expect(run(["check", "--json"], { cwd: at("two/lathe/") }).out).toContain('"mill/');
    for (const r of [run(["check", "two/lathe", "--json"]), run(["check", "two", "--machine", "lathe", "--json"])]) {
      const { checks } = parsed(r) as unknown as { checks: { root: string }[] };
      expect(new Set(checks.map((c) => c.root))).toEqual(new Set(["lathe", "shop"]));
    }
  });

  test("no line is wider than 80 columns, nor than asked for, and without a terminal there is no colour", () => {
    for (const folder of ["fails", "wrong", heron]) {
      for (const [words, width] of [
        [[], 80],
        [["--width", "50"], 50],
      ] as const) {
        const { out } = run(["check", folder, "--quick", ...words]);
        expect(widest(out)).toBeLessThanOrEqual(width);
        expect(stripVTControlCharacters(out)).toBe(out);
      }
    }
  });

  test("a mistake on the line has status 2, and as JSON a code", () => {
    const plain = run(["check", "nowhere"]);
    expect([plain.status, plain.out]).toEqual([2, ""]);
    expect(plain.err).toContain("folder-missing: ");
    expect(parsed(run(["check", "nowhere", "--json"]))).toMatchObject({ error: { code: "folder-missing" } });
  });

  test("in a locale without UTF-8 every letter is ASCII, and verdicts still differ", () => {
    const { out } = run(["check", "fails"], { env: { LC_ALL: "C" } });
    expect(out).not.toMatch(/[^\n -~]/);
    expect(out).toMatch(/# fails/);
  });
});

describe("explain", () => {
  test("a figure shows its formula, the same with numbers, its needs and their places", () => {
    const r = run(["explain", "two", "lathe/supply.loop-resistance"]);
    expect(r.status).toBe(0);
    expect(r.out).toMatch(/R_l = .*rho/);
    expect(r.out).toMatch(/R_l = .*20 m/);
    expect(r.out).toContain("lathe/machine.yaml:4");
    expect(r.out).toContain("source: ");
  });

  test("opened further it shows the workings of what it needs", () => {
    const workings = (depth: string): string[] =>
      (
        parsed(run(["explain", "two", "lathe/supply.loop-resistance", "--depth", depth, "--json"])) as unknown as {
          workings: { id: string }[];
        }
      ).workings.map((w) => w.id);
    expect(workings("0")).toEqual(["supply.loop-resistance"]);
    expect(workings("3")).toEqual(expect.arrayContaining(["supply.loop-resistance", "supply.resistivity", "supply.phases"]));
  });

  test("an id of several machines asks which, and lists them", () => {
    const r = run(["explain", "two", "supply.loop-resistance"]);
    expect(r.status).toBe(2);
    expect(r.err).toContain("name-ambiguous");
    expect(r.err.replaceAll(/\s+/g, " ")).toContain("lathe/supply.loop-resistance, mill/supply.loop-resistance");
    expect(run(["explain", "two", "supply.loop-resistance", "--machine", "mill"]).status).toBe(0);
  });

  test("a slip of the finger gets the nearest word", () => {
    expect(run(["explain", "two", "supply.loop-resistence"]).err).toContain("supply.loop-resistance");
  });

  test("an input shows what counts, what lost against it, and how to find out", () => {
    const r = run(["explain", "fails", "lathe/supply.run.ampacity", "--option", "thick-run"]);
    expect(r.out).toContain("value: 50 A");
    expect(r.out).toMatch(/lost against it: 20 A, lathe\/machine\.yaml:4/);
    expect(r.out).toContain("how to find out: ");
  });

  test("a check is found by some words of its address, in their order", () => {
    const r = run(["explain", heron, "drag-knob", "rough", "torque-holds", "--quick"]);
    expect(r.out).toContain("lathe/spindle.work/drag-knob.operations.rough.cut.torque-holds");
    expect(run(["explain", heron, "spool-shaft", "torque-holds", "--quick"]).err).toContain("name-ambiguous");
  });

  test("a check that fails shows both sides, what would cure it, and has status 1", () => {
    const r = run(["explain", "fails", "supply.run-carries"]);
    expect(r.status).toBe(1);
    expect(r.out).toMatch(/wants 2\d\.\d+ A .*: current in the run/);
    expect(r.out).toContain("lathe/supply.run-current: ");
    expect(r.out).toContain("lathe/supply.run.ampacity: ");
    expect(r.out).toMatch(/option small-oven: ● holds/);
  });
});

describe("work", () => {
  const load = ["work", "supply.load-test-resistance", "V_0=242.6 V", "V_1=238.9 V", "I_1=21 A", "phases=1"];

  test("3.7 V at 21 A are 0.1762 ohm, with formula and numbers, outside any shop", () => {
    const r = run(load);
    expect(r.status).toBe(0);
    expect(r.out).toMatch(/R_t = .*V_0/);
    expect(r.out).toContain("176.2");
    expect(parsed(run([...load, "--json", "--in", "mohm"]))).toMatchObject({ figure: "supply.load-test-resistance", unit: "mohm" });
  });

  test("readings come from a column of a table", () => {
    put("volts.csv", "when,line/V\n7:00,230\n8:00,231\n9:00,228\n");
    const answer = parsed(run(["work", "supply.unbalance", "V_i=@volts.csv:line", "--json"]));
    expect(answer["value"]).toBeCloseTo(5 / 689, 9);
    expect(run(["work", "supply.unbalance", "V_i=@volts.csv:volt"]).err).toContain("file-bad");
    expect(run(["work", "supply.unbalance", "V_i=@none.csv"]).err).toContain("file-missing");
  });

  test("figures are found by a word, with symbol, unit and needs", () => {
    const found = JSON.parse(run(["work", "--list", "load-test", "--json"]).out) as {
      id: string;
      symbol: string;
      unit: string;
      needs: { name: string }[];
    }[];
    expect(found.find((f) => f.id === "supply.load-test-resistance")).toMatchObject({ symbol: "R_t", unit: "ohm" });
    expect(widest(run(["work", "--list"]).out)).toBeLessThanOrEqual(80);
  });

  test("many cases are answered in their order, errors among them, with status 0", () => {
    const given = { V_0: "242.6 V", V_1: "238.9 V", I_1: "21 A", phases: 1 };
    put(
      "cases.json",
      JSON.stringify([
        { id: 1, figure: "supply.load-test-resistance", with: given },
        { id: 2, figure: "nope" },
        { id: 3, figure: "supply.load-test-resistance", with: given, in: "V" },
      ]),
    );
    const r = run(["work", "--cases", "cases.json"]);
    expect(r.status).toBe(0);
    expect(JSON.parse(r.out)).toMatchObject([
      { id: 1, unit: "ohm" },
      { id: 2, error: { code: "figure-unknown" } },
      { id: 3, error: { code: "unit-mismatch" } },
    ]);
  });
});

describe("compare", () => {
  test("an option that cures is better in all imagined shops; cost and hours are added up", () => {
    const r = run(["compare", "fails", "small-oven", "small-oven+thick-run"]);
    expect(r.status).toBe(0);
    expect(r.out).toMatch(/^ {2}as found +small-oven +small-oven\+thick-run$/m);
    expect(r.out).toMatch(/^ {2}cost, own work +90\.00 USD, 2 h +at least|330\.00 USD, 2 h$/m);
    expect(r.out).toMatch(/lathe: Does the run carry.*\n {2}■ .* {2}● .* {2}● .*\n +better in 100 of 100 +better in 100 of 100\n/);
    expect(r.out).toMatch(/\d+ checks? stays? as found/);
    expect(widest(r.out)).toBeLessThanOrEqual(80);
  });

  test("too many options for one line stand below one another, each with its name", () => {
    const r = run(["compare", "fails", "small-oven", "thick-run", "small-oven+thick-run", "long-run"]);
    expect(r.out).toMatch(
      /lathe: Does the run carry.*\n {2}as found {14}■ fails .*\n {2}small-oven {12}● holds .*; better in 100 of 100\n/,
    );
    expect(widest(r.out)).toBeLessThanOrEqual(80);
  });

  test("an option that builds on another is compared with it", () => {
    const [one] = (
      parsed(run(["compare", "fails", "long-run", "--json"])) as unknown as { compared: { options: { name: string }[]; checks: object }[] }
    ).compared;
    expect(one?.options.map((o) => o.name)).toEqual(["thick-run", "long-run"]);
    expect(one?.checks).toHaveProperty([runCheck]);
  });

  test("an unknown option has status 2 and the nearest one", () => {
    const r = run(["compare", "fails", "thick-rn"]);
    expect(r.status).toBe(2);
    expect(r.err).toContain("thick-run");
    expect(run(["compare", "fails"]).err).toContain("small-oven");
  });
});

describe("sweep", () => {
  const words = ["sweep", "fails", "lathe/supply.run.length", "10 to 50 m", "lathe/supply.loop-resistance", "lathe/supply.run-carries"];

  test("a run five times as long has five times the resistance", () => {
    const { runs, input } = parsed(run([...words, "--steps", "5", "--json"])) as unknown as {
      runs: { nominal: number[] }[];
      input: { values: number[] };
    };
    expect(input.values).toEqual([10, 20, 30, 40, 50]);
    const [first = 0, , , , last = 0] = runs[0]?.nominal ?? [];
    expect(last / first).toBeCloseTo(5, 6);
  });

  test("it prints a table and plots that fit, CSV alone, or a drawing in a file", () => {
    expect(widest(run(words).out)).toBeLessThanOrEqual(80);
    expect(
      run([...words, "--csv", "--steps", "3"])
        .out.trim()
        .split("\n"),
    ).toHaveLength(4);
    expect(run([...words, "--svg", "drawn.svg"]).status).toBe(0);
    expect(readFileSync(at("drawn.svg"), "utf8")).toMatch(/^<svg [\s\S]*<\/svg>\s*$/);
  });
});

describe("new", () => {
  test("whoever knows nothing gets a folder without a mistake, and three things to find out", () => {
    put("nothing.yaml", "shop: don't know\nvoltage:\n");
    const r = run(["new", "made", "--from", "nothing.yaml"]);
    expect(r.out).toMatch(
      /Find out before buying\n {2}1\. At the main panel[\s\S]*\n {2}2\. At the spindle motor[\s\S]*\n {2}3\. Along the cable/,
    );
    expect(r.status).toBe(0);
    expect(readFileSync(at("made/shop.yaml"), "utf8")).toContain("kind: unknown");
    expect(run(["check", "made"]).status).toBe(0);
  });

  test("a folder that is not empty is left alone", () => {
    put("taken/mine.txt", "mine");
    put("answers.yaml", "voltage: 240 V\n");
    const r = run(["new", "taken", "--from", "answers.yaml"]);
    expect([r.status, r.out]).toEqual([2, ""]);
    expect(r.err).toContain("folder-taken");
    expect(run(["check", "taken"]).status).toBe(2);
  });

  test("mistaken answers are named all at once, and nothing is written", () => {
    put("bad.json", '{"voltage": "240", "rating": "60 V", "sevice": "split-phase"}');
    const r = run(["new", "bad", "--from", "bad.json", "--json"]);
    expect(r.status).toBe(2);
    expect(parsed(r)).toMatchObject({
      error: { code: "answer-bad", among: [/240/, /60 V/, /service/].map((x) => expect.stringMatching(x) as unknown) },
    });
    expect(run(["check", "bad"]).err).toContain("folder-missing");
  });

  test("the list of questions is itself a file of answers", () => {
    put("questions.yaml", run(["new", "--questions"]).out);
    expect(run(["new", "from-questions", "--from", "questions.yaml"]).status).toBe(0);
  });

  test("with nobody to ask it says so", () => {
    const r = run(["new", "alone"]);
    expect(r.status).toBe(2);
    expect(r.err).toContain("--from");
  });
});

describe("open", () => {
  const page = fileURLToPath(new URL("../../src/surfaces/web/index.html", import.meta.url));
  // A clone without the page has nothing to serve, and says so.
  test.skipIf(!existsSync(page))("the workbench is served until it is told to end", async () => {
    const child = spawn(process.execPath, [bin, "open", "two", "--no-browser"], { cwd: place, stdio: ["ignore", "pipe", "pipe"] });
    const link = await lineOf(child, /Workbench: (http:\/\/127\.0\.0\.1:\d+\/\?start=\S+)/);
    const answer = await fetch(link, { redirect: "manual" });
    expect(answer.status).toBeLessThan(400);
    const ended = new Promise<number | null>((done) => child.once("exit", done));
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
  });

  test("a port that is none is refused", () => {
    expect(run(["open", "two", "--port", "70000"]).err).toContain("argument-bad");
  });
});

function lineOf(child: ChildProcess, wanted: RegExp): Promise<string> {
  return new Promise((done, failed) => {
    let text = "";
    const read = (chunk: Buffer): void => {
      text += chunk.toString();
      const found = wanted.exec(text)?.[1];
      if (found !== undefined) done(found);
    };
    child.stdout?.on("data", read);
    child.stderr?.on("data", read);
    child.once("exit", (code) => failed(new Error(`ended with ${code}: ${text}`)));
  });
}

describe("the program", () => {
  test("its version is that of the package", () => {
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as { version: string };
    expect(run(["--version"])).toMatchObject({ status: 0, out: `${version}\n` });
  });

  test("help is printed for every way of asking, and completion for each shell", () => {
    for (const words of [[], ["help"], ["--help"], ["check", "--help"], ["help", "check"], ["completion", "bash"]]) {
      const r = run(words);
      expect(r.status).toBe(0);
      expect(r.out).toContain("waywright");
    }
    expect(run(["completion", "tcsh"]).status).toBe(2);
  });
});
