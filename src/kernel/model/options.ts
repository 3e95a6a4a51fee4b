// The options of a variant: which are laid on, what they still need, and where two of them want different things.
import type { Place } from "../finding.ts";
import { nearest } from "../nearest.ts";
import type { Address } from "./address.ts";
import type { OptionDoc, RecordDoc } from "./change.ts";
import { canonical } from "./digest.ts";
import type { Node, Variant } from "./node.ts";
import { type Draft, startOf, where } from "./report.ts";

/** The options of the variant, in the order named. */
export function chosen(options: readonly OptionDoc[], records: readonly RecordDoc[], variant: Variant, drafts: Draft[]): OptionDoc[] {
  const laid: OptionDoc[] = [];
  for (const { machine, name } of variant.options) {
    const doc = options.find((o) => o.option.machine === machine && o.option.name === name);
    if (doc) {
      if (!laid.includes(doc)) laid.push(doc);
    } else drafts.push(unknownOption(name, machine, options, startOf(`${machine}/options/${name}.yaml`)));
  }
  const known = new Set(options.map((o) => `${o.option.machine}/${o.option.name}`));
  for (const doc of options) {
    for (const need of doc.needs) {
      const { machine, name } = doc.option;
      if (!known.has(`${machine}/${need.text}`)) drafts.push(unknownOption(need.text, machine, options, need.place));
      else if (laid.includes(doc) && !laid.some((o) => o.option.machine === machine && o.option.name === need.text)) {
        drafts.push({
          code: "option-needs",
          says: `\`${name}\` needs \`${need.text}\`, which is not laid on`,
          place: need.place,
          expected: need.text,
        });
      }
    }
  }
  for (const { record, under } of records) {
    for (const u of under)
      if (!known.has(`${record.machine}/${u.text}`)) drafts.push(unknownOption(u.text, record.machine, options, u.place));
  }
  return laid;
}

function unknownOption(name: string, machine: string, options: readonly OptionDoc[], place: Place): Draft {
  const near = nearest(
    name,
    options.filter((o) => o.option.machine === machine).map((o) => o.option.name),
  );
  const says = `no option \`${name}\` in ${machine}/options/.${near ? ` Did you mean \`${near}\`?` : ""}`;
  return { code: "option-unknown", says, place, ...(near ? { nearest: near } : {}) };
}

interface Touch {
  readonly option: string;
  readonly address: string;
  readonly says: string;
  readonly place: Place;
}

/** Two options of one variant that set the same value, differently. */
export function collisions(laid: readonly OptionDoc[], drafts: Draft[]): void {
  const touched: Touch[] = [];
  for (const { option, set, replace, remove } of laid) {
    const mine: Touch[] = [];
    const touch = (address: Address, says: string, place: Place): void => {
      mine.push({ option: option.name, address: `${address.root}/${address.path.join(".")}.`, says, place });
    };
    for (const r of remove) touch(r.address, "", r.place);
    for (const c of replace) touch(c.address, canonical(c.node), c.place);
    for (const c of set)
      for (const [path, node] of values(c.node)) touch({ ...c.address, path: [...c.address.path, ...path] }, canonical(node), c.place);
    const told = new Set<string>();
    for (const m of mine) {
      const other = touched.find(
        (t) => (t.address.startsWith(m.address) || m.address.startsWith(t.address)) && !(t.address === m.address && t.says === m.says),
      );
      const mark = other && `${other.option} ${m.place.line}`;
      if (!other || mark === undefined || told.has(mark)) continue;
      told.add(mark);
      const path = m.address.slice(0, -1);
      drafts.push({
        code: "options-collide",
        says: `\`${path}\` is set by \`${other.option}\` too (${where(other.place)}); ${option.name} wins, being named later`,
        place: m.place,
      });
    }
    touched.push(...mine);
  }
}

/** The values of a tree with their paths below it. */
function values(node: Node, path: readonly string[] = []): [readonly string[], Node][] {
  if (node.is !== "map" || node.entries.size === 0) return [[path, node]];
  return [...node.entries].flatMap(([key, child]) => values(child, [...path, key]));
}
