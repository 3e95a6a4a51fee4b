// The example shop with a few letters changed, and what the program then finds that it does not find in the whole one.
import { readShop } from "../../src/files/shop-folder.ts";
import type { Finding, FindingCode } from "../../src/kernel/finding.ts";
import { asFound, type Variant } from "../../src/kernel/model/node.ts";
import { parseShop } from "../../src/kernel/model/shop.ts";
import { study, type Study } from "../../src/kernel/study.ts";
import { waywright } from "../../src/rooms/index.ts";

/** One place of one file: `was`, which stands there once, gives way to `typed`; left out, the whole file does. */
export interface Edit {
  readonly file: string;
  readonly was?: string;
  /** What is typed. Each mark in it (▸, not typed itself) shows where a finding has to stand. */
  readonly typed: string;
}

/** What a finding has to say besides its place. */
export interface Finds {
  readonly code: FindingCode;
  readonly severity?: "note";
  readonly expected?: string;
  readonly nearest?: string;
}

export interface Found {
  readonly findings: readonly (Finds & { readonly at: string })[];
  /** `file:line:column` of each mark. */
  readonly marks: readonly string[];
  readonly study: Study;
}

export const heron = new URL("../../examples/heron", import.meta.url).pathname;
const whole = readShop(heron).files;
const shop = parseShop(whole, waywright.keys);
const asItStands: Study = study(waywright, shop, asFound, "nominal");
const usual = new Set(asItStands.answer.findings.map(saying));

/** The same finding in a file whose lines have moved. */
function saying({ place, code, says }: Finding): string {
  return `${place.file} ${code} ${says}`;
}

/** What edits bring to light, by place, options of the lathe laid on. */
export function found(edits: readonly Edit[], options: readonly string[] = []): Found {
  const typed = new Map([...whole].map(([file, { text }]) => [file, text]));
  for (const { file, was, typed: text } of edits) typed.set(file, was === undefined ? text : exchanged(typed.get(file) ?? "", was, text));
  const marks = [...typed].toSorted(([a], [b]) => (a < b ? -1 : 1)).flatMap(([file, text]) => marksOf(file, text));
  const files = new Map([...typed].map(([file, text]) => [file, { text: text.replaceAll("▸", "") }]));
  const variant: Variant = { options: options.map((name) => ({ machine: "lathe", name })), tries: [] };
  const broken = study(waywright, parseShop(files, waywright.keys, shop), variant, "nominal", asItStands);
  const findings = broken.answer.findings.filter((f) => !usual.has(saying(f))).map(told);
  return { findings, marks, study: broken };
}

function exchanged(text: string, was: string, typed: string): string {
  const parts = text.split(was);
  if (parts.length !== 2) throw new Error(`"${was}" stands ${parts.length - 1} times where it should stand once`);
  return parts.join(typed);
}

function marksOf(file: string, text: string): string[] {
  return text.split("\n").flatMap((line, row) => {
    const before = line
      .replace(/^\uFEFF/, "")
      .split("▸")
      .slice(0, -1);
    return before.map((_, i) => `${file}:${row + 1}:${1 + before.slice(0, i + 1).join("").length}`);
  });
}

function told({ code, severity, place, expected, nearest }: Finding): Found["findings"][number] {
  return {
    at: `${place.file}:${place.line}:${place.column}`,
    code,
    ...(severity === "note" && { severity }),
    ...(expected !== undefined && { expected }),
    ...(nearest !== undefined && { nearest }),
  };
}
