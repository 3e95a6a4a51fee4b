// Which records count in a variant, and why the others are put aside.
import type { Place } from "../finding.ts";
import type { Address } from "./address.ts";
import type { OptionDoc, RecordDoc } from "./change.ts";
import { canonical, digest } from "./digest.ts";
import type { Keys } from "./keys.ts";
import { type Counting, lay } from "./lay.ts";
import { type Trees, withParts } from "./lines.ts";
import { type Node, nodeAt, type RecordFile } from "./node.ts";
import type { Draft } from "./report.ts";

export interface Judged {
  readonly records: readonly RecordFile[];
  /** The strongest last. */
  readonly counting: readonly Counting[];
}

/** Which records count in this variant, and why the others do not. */
export function judge(
  lines: Trees,
  records: readonly RecordDoc[],
  laid: readonly OptionDoc[],
  options: readonly OptionDoc[],
  keys: Keys,
  drafts: Draft[],
): Judged {
  const withdrawn = new Map<string, string>();
  for (const { record, supersedes } of records)
    if (record.accepted && supersedes) withdrawn.set(`${record.machine}/${supersedes}`, record.name);
  const isOn = (machine: string, name: string): boolean => laid.some((o) => o.option.machine === machine && o.option.name === name);
  const ground = groundOf(lines, keys);
  const judged: RecordFile[] = [];
  const counting: Counting[] = [];
  for (const doc of records.toSorted((a, b) => order(a.record, b.record))) {
    const { record, under } = doc;
    const by = withdrawn.get(`${record.machine}/${record.name}`);
    const off = under.find((u) => !isOn(record.machine, u.text));
    const moved = record.accepted && by === undefined && !off ? movedGround(doc, laid, options, ground) : null;
    if (moved) drafts.push({ code: "record-aside", says: `\`${record.name}\` is put aside: ${moved.says}`, place: moved.place });
    const aside = !record.accepted
      ? "not accepted"
      : by !== undefined
        ? `withdrawn by ${by}`
        : off
          ? `taken with ${off.text}, which is not laid on`
          : (moved?.says ?? null);
    judged.push({ ...record, aside });
    if (aside === null) counting.push({ doc, beatsOptions: under.length > 0 });
  }
  return { records: judged, counting };
}

const order = (a: { date: string; name: string }, b: { date: string; name: string }): number =>
  a.date < b.date ? -1 : a.date > b.date ? 1 : a.name < b.name ? -1 : Number(a.name > b.name);

/** The trees with some options laid over and parts laid under, no records; each put together once. */
function groundOf(lines: Trees, keys: Keys): (laid: readonly OptionDoc[]) => Trees {
  const done = new Map<string, Trees>();
  return (laid) => {
    const mark = laid.map((o) => `${o.option.machine}/${o.option.name}`).join(" ");
    let trees = done.get(mark);
    if (!trees) done.set(mark, (trees = withParts(lay(lines, laid, [], []), keys, [])));
    return trees;
  };
}

/** What changed at the paths a record depends on: an edit since it was taken, or an option. */
function movedGround(
  doc: RecordDoc,
  laid: readonly OptionDoc[],
  options: readonly OptionDoc[],
  ground: ReturnType<typeof groundOf>,
): { says: string; place: Place } | null {
  const { record, under, holdsWhile } = doc;
  const at = (trees: Trees, { root, path }: Address): Node | undefined => nodeAt(trees.get(root), path);
  const taken = options.filter((o) => o.option.machine === record.machine && under.some((u) => u.text === o.option.name));
  for (const { text, address, place, digest: kept } of holdsWhile) {
    if (kept !== undefined && kept !== digest(at(ground([]), address)))
      return { says: `\`${text}\` in the files is not what it was when the reading was taken`, place };
    const before = canonical(at(ground(taken), address));
    if (before === canonical(at(ground(laid), address))) continue;
    const alone = laid.find((o) => !taken.includes(o) && canonical(at(ground([...taken, o]), address)) !== before);
    const names = alone ? [alone.option.name] : laid.filter((o) => !taken.includes(o)).map((o) => o.option.name);
    return { says: `\`${text}\`, on which it depends, is changed by ${names.map((n) => `\`${n}\``).join(" and ")}`, place };
  }
  return null;
}
