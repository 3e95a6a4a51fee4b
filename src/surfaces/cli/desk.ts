// The shop a command works on: which folder, which machine, which options, and the study of it.
import { statSync } from "node:fs";
import { relative, resolve, sep } from "node:path";
import { buildOf, openAnswers } from "../../files/answers.ts";
import { findShop, readShop } from "../../files/shop-folder.ts";
import { type Trial as Judgement, trialOf } from "../../kernel/compare.ts";
import { evaluate, type Evaluation, type Mode } from "../../kernel/evaluate.ts";
import type { Finding } from "../../kernel/finding.ts";
import { build } from "../../kernel/graph.ts";
import { lend } from "../../kernel/kept.ts";
import { asFound, type OptionFile, type Variant } from "../../kernel/model/node.ts";
import { parseShop, type ParsedShop, resolve as resolveModel } from "../../kernel/model/resolve.ts";
import { nearest } from "../../kernel/nearest.ts";
import { study, type Study } from "../../kernel/study.ts";
import { waywright } from "../../rooms/index.ts";
import type { Given } from "./arguments.ts";
import { Misuse } from "./misuse.ts";
import { listed } from "./text.ts";

export interface Desk {
  readonly root: string;
  readonly parsed: ParsedShop;
  /** The machine that was named, by --machine or by its folder. */
  readonly machine: string | null;
  /** What was given besides the folder. */
  readonly words: readonly string[];
  /** Of the folder and its files. */
  readonly findings: readonly Finding[];
  readonly options: readonly OptionFile[];
  readonly mode: Mode;
}

type Laid = Variant["options"][number];

/** Opens the shop that the words name, or the nearest one upward. */
export function openDesk(given: Given, cwd: string): Desk {
  const folder = given.words.find((w) => isFolder(resolve(cwd, w)) && findShop(resolve(cwd, w)) !== null);
  const words = folder === undefined ? given.words : given.words.toSpliced(given.words.indexOf(folder), 1);
  const lost = words.find((w) => given.command.takes === "[DIR]" || isFolder(resolve(cwd, w)));
  if (lost !== undefined) throw noShop(lost, cwd, folder !== undefined);
  const start = resolve(cwd, folder ?? ".");
  const root = findShop(start);
  if (root === null)
    throw new Misuse(
      "folder-missing",
      `there is no shop.yaml in ${start} or above it; name a shop folder, or start one with: waywright new DIR`,
    );
  const program = buildOf(import.meta.url);
  lend(program === null ? null : openAnswers(root, program));
  const files = readShop(root);
  const parsed = parseShop(files.files, waywright.keys);
  const [top = ""] = relative(root, start).split(sep);
  const named = given.value("machine") ?? (parsed.machines.has(top) ? top : null);
  if (named !== null && !parsed.machines.has(named)) throw unknownMachine(named, parsed.machines);
  const found = resolveModel(parsed, waywright.keys, asFound);
  return {
    root,
    parsed,
    machine: named,
    words,
    findings: files.findings,
    options: found.options,
    mode: given.has("quick") ? "quick" : "full",
  };
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;

function noShop(word: string, cwd: string, second: boolean): Misuse {
  const path = resolve(cwd, word);
  if (second) return new Misuse("argument-extra", `one folder is enough; "${word}" is one too many`);
  if (isFolder(path)) return new Misuse("folder-missing", `there is no shop.yaml in ${path} or above it`);
  return new Misuse("folder-missing", `there is no folder ${path}`);
}

function unknownMachine(name: string, machines: ReadonlySet<string>): Misuse {
  const near = nearest(name, machines);
  return new Misuse(
    "machine-unknown",
    `there is no machine ${name}; there ${machines.size === 1 ? "is" : "are"} ${listed([...machines])}`,
    near === undefined ? [...machines] : [near],
  );
}

/** Options by name, `machine/name` where several machines have one of that name; `a+b` are two. */
export function optionsNamed(desk: Desk, texts: readonly string[]): Laid[] {
  return texts
    .flatMap((t) => t.split("+"))
    .map((text) => {
      const slash = text.indexOf("/");
      const machine = slash < 0 ? desk.machine : text.slice(0, slash);
      const name = text.slice(slash + 1);
      const all = desk.options.filter((o) => machine === null || o.machine === machine);
      const fits = all.filter((o) => o.name === name);
      if (fits.length > 1)
        throw new Misuse(
          "name-ambiguous",
          `several machines have an option ${name}: say ${listed(
            fits.map((o) => `${o.machine}/${o.name}`),
            "or",
          )}`,
          fits.map((o) => `${o.machine}/${o.name}`),
        );
      const [one] = fits;
      if (one) return { machine: one.machine, name: one.name };
      const near = nearest(
        name,
        all.map((o) => o.name),
      );
      const others =
        all.length === 0 ? "there are none" : near === undefined ? `there are ${listed(all.map((o) => o.name))}` : `nearest: ${near}`;
      throw new Misuse("name-unknown", `there is no option ${text}; ${others}`, near === undefined ? all.map((o) => o.name) : [near]);
    });
}

/** What --option lays over. */
export const variantGiven = (desk: Desk, given: Given): Variant => ({ options: optionsNamed(desk, given.values("option")), tries: [] });

/** `before` lends its columns; the figures of the answer are left out where nobody reads them. */
export function studyOf(desk: Desk, variant: Variant, { before, figures = true }: { before?: Study; figures?: boolean } = {}): Study {
  return study(waywright, desk.parsed, variant, desk.mode, before, figures);
}

/** A variant judged, with what is wrong in it: for many of them in a row. */
export interface Trial extends Judgement {
  readonly findings: readonly Finding[];
}

export function tryOut(desk: Desk, variant: Variant, before: Evaluation): Trial {
  const { evaluation, findings } = evaluated(desk, variant, before);
  return { ...trialOf(evaluation), findings };
}

/** A variant evaluated and not judged. */
export function evaluated(desk: Desk, variant: Variant, before: Evaluation): { evaluation: Evaluation; findings: readonly Finding[] } {
  const model = resolveModel(desk.parsed, waywright.keys, variant);
  return { evaluation: evaluate(build(waywright, model), desk.mode, before), findings: model.findings };
}

/** Findings of the folder and of the model, each once: what must be mended before what is worth knowing. */
export function allFindings(desk: Desk, model: readonly Finding[]): Finding[] {
  const key = (f: Finding): string => `${f.place.file}:${f.place.line}:${f.place.column} ${f.code}`;
  const own = new Set(desk.findings.map(key));
  const all = [...desk.findings, ...model.filter((f) => !own.has(key(f)))];
  return all.toSorted((a, b) => Number(b.severity === "error") - Number(a.severity === "error"));
}

export const hasError = (findings: readonly Finding[]): boolean => findings.some((f) => f.severity === "error");

/** Whether something at this root counts: everything, unless a machine was named; the shop counts for all of them. */
export const concerns = (desk: Pick<Desk, "machine">, root: string): boolean =>
  desk.machine === null || root === desk.machine || root === "shop";
