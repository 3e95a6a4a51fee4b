// Compare: options of a machine side by side, and values tried out on sliders. Nothing here writes a file.
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { answer, edits, disk, laid } from "../model/desk.ts";
import { useAsk } from "../model/asking.ts";
import { machineName } from "../model/names.ts";
import { counted } from "../model/numbers.ts";
import { go, machine, route } from "../model/place.ts";
import { Say } from "../parts/say.tsx";
import { Page } from "../shell/page.tsx";
import { columnsOf, columnsText, flipped, isMine, keyOf, type Names, namesOf } from "../compare/columns.ts";
import { Picker } from "../compare/picker.tsx";
import { useReplies } from "../compare/replies.ts";
import { compareSentence } from "../compare/sentence.ts";
import type { Column } from "../compare/column.ts";
import { Comparison } from "../compare/table.tsx";
import { followAddress, isTriedChosen, leaveTried, triedValues, triesOf } from "../compare/tried.ts";
import { WhatIf } from "../compare/what-if.tsx";
import { LostPage } from "./lost.tsx";
import "../styles/entry.css";
import "../styles/compare.css";

export function ComparePage(): JSX.Element {
  const root = machine.value ?? "";
  const said = answer.value;
  const { own } = route.value;
  useEffect(() => leaveTried, []);
  useEffect(followAddress, [route.value]);
  const unread = useAsk("unread", { machine: root }).reply;
  const files = (said?.options ?? []).filter((o) => o.machine === root);
  const isRead = (name: string): boolean => unread?.includes(name) === false;
  const laidNames = laid.value.filter((o) => o.machine === root).map((o) => o.name);
  const isTried = isTriedChosen();
  const over = isTried ? laidNames : namesOf(own.get("over") ?? "");
  const known = (names: Names): boolean => names.length > 0 && names.every((name) => files.some((f) => f.name === name));
  const usual = files.map((f) => f.name).filter(isRead);
  const beside = columnsOf(own.get("cols"), usual, laidNames).filter(known);
  const tries = triesOf(triedValues.value);
  const optionsOf = (names: Names) => names.map((name) => ({ machine: root, name }));
  const specs = [
    { key: "", names: [] as Names, isTried: false },
    ...(tries.length === 0 ? [] : [{ key: "tried", names: over, isTried: true }]),
    ...beside.map((names) => ({ key: keyOf(names), names, isTried: false })),
  ];
  const replies = useReplies(
    said === null || unread === null ? [] : specs.map((s) => ({ key: s.key, options: optionsOf(s.names), tries: s.isTried ? tries : [] })),
  );
  const columns = specs.map(({ key, names, isTried: isOf }): Column => {
    const held = replies.get(key);
    const title = isOf
      ? `${counted(tries.length, "value")} over ${names.length === 0 ? "the machine as found" : keyOf(names)}`
      : names.map((name) => files.find((f) => f.name === name)?.title ?? name).join("; ");
    const isChosen = isOf ? isTried : !isTried && key === keyOf(laidNames);
    return {
      key,
      names,
      name: isOf ? "what if" : names.length === 0 ? "as found" : names.join(" + "),
      title,
      isTried: isOf,
      isChosen,
      reply: held?.reply ?? null,
      isStale: held?.isStale ?? false,
    };
  });
  if (said && !said.machines.some((m) => m.root === root)) return <LostPage />;
  const show = (next: readonly Names[]): void => go({ ...route.value, own: new Map(own).set("cols", columnsText(next)) });
  const [found, ...rest] = columns;
  const told = rest.flatMap((c) =>
    c.reply && !c.isTried ? [{ name: c.name, checks: mine(c.reply.checks, root), cost: c.reply.cost, hours: c.reply.hours }] : [],
  );
  const isAll = found?.reply && told.length === rest.filter((c) => !c.isTried).length;
  const isUnread = unread !== null && beside.length === 0 && files.length > 0 && !files.some((f) => isRead(f.name));
  return (
    <Page
      crumb={`${machineName(root)} · ${counted(files.length, "option")}`}
      title="Compare"
      class="compare"
      sentence={
        isAll && found?.reply ? (
          <Say text={isUnread ? allUnread : compareSentence(mine(found.reply.checks, root), told)} />
        ) : (
          <Progress done={replies.size} all={specs.length} />
        )
      }
    >
      <section class="side-by-side" aria-labelledby="side-by-side">
        <div class="sec">
          <h2 id="side-by-side">Options side by side</h2>
          <Picker files={files} columns={beside} isRead={isRead} flip={(names) => show(flipped(beside, names))} />
        </div>
        <Comparison root={root} columns={columns} drop={(names) => show(flipped(beside, names))} />
      </section>
      <WhatIf
        root={root}
        over={over}
        beside={beside}
        columns={columns}
        taken={new Set([...disk.value.keys(), ...edits.value.texts.keys()])}
      />
    </Page>
  );
}

const allUnread = "No room reads yet what the options of this machine change. Values can be tried out all the same.";

function mine<T extends { readonly address: string }>(checks: readonly T[], root: string): T[] {
  return checks.filter((c) => isMine(c.address, root));
}

function Progress({ done, all }: { done: number; all: number }): JSX.Element {
  return (
    <span class="q" role="status">
      Working out the columns … {done} of {all}
    </span>
  );
}
