// What would change a check: its remedies and the shop's own options, each with the verdict it would bring; one click lays it over.
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { CheckAnswer } from "../../../kernel/answer.ts";
import { answer, ask, isSettled, laid, pass, trail } from "../model/desk.ts";
import { typedAll } from "../model/edits.ts";
import { marginNumber } from "../model/numbers.ts";
import { chooseOptions, route, workingLink } from "../model/place.ts";
import { optionTrials, queued, wantTrials } from "../model/trials.ts";
import type { Outcome } from "../../../kernel/compare.ts";
import { partsOf } from "../worker/view.ts";
import { Icon } from "./icon.tsx";
import { VerdictWord } from "./verdict.tsx";

type Remedy = CheckAnswer["remedies"][number];

/** `most`: in a list of checks only the first few stand; the working has them all. */
export function Remedies({ check, most = Infinity }: { check: CheckAnswer; most?: number }): JSX.Element {
  useEffect(() => wantTrials(), []);
  // What can be tried out at a click says most: it stands first.
  const remedies = check.remedies.toSorted((a, b) => Number(a.lay === null) - Number(b.lay === null));
  const options = optionsThatHelp(check);
  const shown = remedies.slice(0, Math.max(1, most - options.length));
  const left = remedies.length - shown.length + Math.max(0, options.length - most);
  return (
    <ul class="rems">
      {shown.map((r) => (
        <RemedyLine key={r.does} check={check} remedy={r} />
      ))}
      {options.slice(0, most).map(({ name, title, outcome }) => (
        <li class="rem" key={name}>
          <Icon name="remedy" size={13} />
          <button type="button" class="link" onClick={() => chooseOptions([...route.value.options, name])}>
            option {name.split("/").at(-1)}
          </button>
          <Becomes outcome={outcome} />
          <span class="q2 cost">{title}</span>
        </li>
      ))}
      {left > 0 ? (
        <li class="rem">
          <a class="q" href={workingLink(check.address)}>
            {left} more
          </a>
        </li>
      ) : null}
    </ul>
  );
}

const rank = ["fails", "open", "tight", "holds"];

/** Options whose trial brings a better word, or a clearly better margin, best first. */
function optionsThatHelp(check: CheckAnswer): { name: string; title: string; outcome: Outcome }[] {
  const files = answer.value?.options ?? [];
  const at = (o: Outcome): number => (typeof o.margin.nominal === "number" ? o.margin.nominal : 0);
  return [...optionTrials.value]
    .flatMap(([name, outcomes]) => {
      const outcome = outcomes[check.address];
      const title = files.find((f) => `${f.machine}/${f.name}` === name)?.title ?? "";
      const isLaid = laid.value.some((l) => `${l.machine}/${l.name}` === name);
      return outcome && !isLaid && rank.indexOf(outcome.verdict) > rank.indexOf(check.verdict) ? [{ name, title, outcome }] : [];
    })
    .toSorted((a, b) => rank.indexOf(b.outcome.verdict) - rank.indexOf(a.outcome.verdict) || at(b.outcome) - at(a.outcome));
}

function RemedyLine({ check, remedy }: { check: CheckAnswer; remedy: Remedy }): JSX.Element {
  const { lay } = remedy;
  const [tried, setTried] = useState<{ pass: number; outcome: Outcome | null } | null>(null);
  const now = pass.value;
  const ready = isSettled.value;
  useEffect(() => {
    if (lay === null || !ready) return undefined;
    let isCurrent = true;
    void queued(() => (isCurrent ? ask("tryRemedy", { item: check.item, lay }) : Promise.resolve(null))).then(
      (outcomes) => isCurrent && setTried({ pass: now, outcome: outcomes?.[check.address] ?? null }),
      () => isCurrent && setTried(null),
    );
    return () => {
      isCurrent = false;
    };
  }, [now, ready, check.address]);
  const outcome = tried?.outcome ?? null;
  return (
    <li class="rem">
      <Icon name="remedy" size={13} />
      {lay === null ? (
        <span>{remedy.does}</span>
      ) : (
        <button type="button" class="link" title="Lay it over; nothing is written until you keep it" onClick={() => layOver(check, lay)}>
          {remedy.does}
        </button>
      )}
      {lay === null ? null : outcome === null ? <span class="q">…</span> : <Becomes outcome={outcome} />}
      {remedy.costs === "" ? null : <span class="q2 cost">{remedy.costs}</span>}
    </li>
  );
}

/** The values of a remedy become edits: shown at once, kept like any other. */
function layOver(check: CheckAnswer, lay: Readonly<Record<string, string>>): void {
  const { root, path: under } = partsOf(check.item);
  const values = Object.entries(lay).map(([path, text]): [string, string] => {
    if (path.startsWith("shop/")) return [path, text];
    return [`${root}/${under === "" ? path : `${under}.${path}`}`, text];
  });
  trail.value = typedAll(trail.value, new Map(values));
}

function Becomes({ outcome }: { outcome: Outcome }): JSX.Element {
  const { nominal } = outcome.margin;
  return (
    <span class="becomes">
      {outcome.yesNo ? null : <b>{typeof nominal === "number" || "never" in nominal ? marginNumber(nominal) : ""}</b>}
      <VerdictWord verdict={outcome.verdict} size={12} />
    </span>
  );
}
