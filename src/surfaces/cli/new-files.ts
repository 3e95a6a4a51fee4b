// Answers as the text of a shop folder: what is known is written, what was asked and is not known says so.
import { isDontKnow, type Question, questions } from "./questions.ts";

export type Answers = Readonly<Record<string, string>>;

export interface NewFile {
  /** From the shop folder, parted by "/". */
  readonly path: string;
  readonly text: string;
}

/** The answer to a question; null when nobody knows. */
export const known = (answers: Answers, name: string): string | null => {
  const answer = Object.hasOwn(answers, name) ? (answers[name] ?? "").trim() : "";
  return isDontKnow(answer) ? null : answer;
};

/** Folder of the machine: the name given, else what its kind suggests. */
export function folderOf(answers: Answers): string {
  return known(answers, "folder") ?? (known(answers, "kind")?.endsWith("mill") ? "mill" : "lathe");
}

const fallbacks: Readonly<Record<string, string>> = { shop: "My shop", machine: "My machine", units: "metric" };

/** The files of the folder. */
export function filesOf(answers: Answers): NewFile[] {
  const roots = { shop: new Map<string, Tree>(), machine: new Map<string, Tree>() };
  for (const q of questions) {
    if (q.at === null) continue;
    const [root, path] = q.at;
    put(roots[root], path.split("."), {
      text: known(answers, q.name) ?? fallbacks[q.name] ?? "unknown",
      from: fallbacks[q.name] === undefined ? q : null,
    });
  }
  const head = "# Written by waywright new. `unknown` was asked and is not known yet: put what you find in its place.\n";
  return [
    { path: "shop.yaml", text: `${head}waywright: 1\n${yaml(roots.shop)}` },
    { path: `${folderOf(answers)}/machine.yaml`, text: `${head}${yaml(roots.machine)}` },
  ];
}

interface Value {
  readonly text: string;
  readonly from: Question | null;
}
type Tree = Value | Map<string, Tree>;

function put(tree: Map<string, Tree>, path: readonly string[], value: Value): void {
  const [key = "", ...rest] = path;
  if (rest.length === 0) {
    tree.set(key, value);
    return;
  }
  const had = tree.get(key);
  const child = had instanceof Map ? had : new Map<string, Tree>();
  tree.set(key, child);
  put(child, rest, value);
}

function yaml(tree: ReadonlyMap<string, Tree>, indent = ""): string {
  return [...tree]
    .map(([key, value]) => {
      if (value instanceof Map) return `${indent}${key}:\n${yaml(value, `${indent}  `)}`;
      const note = value.text === "unknown" && value.from ? ` # ${value.from.asks}` : "";
      return `${indent}${key}: ${scalar(value.text)}${note}\n`;
    })
    .join("");
}

/** Quotes where plain text would mean something else. */
function scalar(text: string): string {
  const plain = /^[A-Za-z0-9][^:#"'\\{}[\]]*$/.test(text) && !/^(true|false|yes|no|on|off|null|~)$/i.test(text) && text === text.trim();
  return plain ? text : JSON.stringify(text);
}
