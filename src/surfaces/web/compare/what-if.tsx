// What if: any input tried out on a slider or as text, several at once; which verdicts that changes; kept, if at all, as an option.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { InputAnswer } from "../../../kernel/answer.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { prettyUnit, type System } from "../../../kernel/display.ts";
import { answer, banded, household, newest } from "../model/desk.ts";
import { found } from "../model/match.ts";
import { capital } from "../model/names.ts";
import { counted } from "../model/numbers.ts";
import { go, route, workingLink } from "../model/place.ts";
import { ownNow } from "../model/soon.ts";
import { thingName } from "../model/things.ts";
import { Combobox } from "../parts/combobox.tsx";
import { Icon } from "../parts/icon.tsx";
import { VerdictWord } from "../parts/verdict.tsx";
import { isMine, isSame, keyOf, type Names } from "./columns.ts";
import { KeepOption } from "./keep-option.tsx";
import { positionOf, rangeAround, spanOf, startText, textAt, usualRange } from "./span.ts";
import type { Column } from "./columns.ts";
import { useLive } from "./live.ts";
import { setTried, triedValues } from "./tried.ts";
import type { TriedValue } from "./tried-address.ts";

interface WhatIfProps {
  readonly root: string;
  /** Options under the values tried out. */
  readonly over: Names;
  readonly beside: readonly Names[];
  readonly columns: readonly Column[];
  /** Files that are there. */
  readonly taken: ReadonlySet<string>;
}

export function WhatIf({ root, over, beside, columns, taken }: WhatIfProps): JSX.Element {
  const values = triedValues.value;
  const [isKeeping, setKeeping] = useState(false);
  const said = answer.value;
  const inputs = said?.inputs ?? {};
  const system: System | null = said?.show ?? null;
  const add = (address: string): void => {
    // Once a value is tried, its input has no band of its own any more: the range is taken from the last bands.
    const input = banded.value?.answer.inputs[address] ?? inputs[address];
    if (!input || system === null || values.some((v) => v.address === address)) return;
    choose(root, over);
    setTried([...values, { address, text: startText(input, system), range: input.form === "quantity" ? usualRange(input, system) : null }]);
    ownNow();
  };
  const change = (next: TriedValue): void => {
    choose(root, over);
    setTried(values.map((v) => (v.address === next.address ? next : v)));
  };
  const drop = (address: string): void => {
    setTried(values.filter((v) => v.address !== address));
    ownNow();
  };
  return (
    <section class="what-if" aria-labelledby="what-if">
      <div class="sec">
        <h2 id="what-if">What if</h2>
        {beside.length === 0 ? null : (
          <label class="small">
            over{" "}
            <select value={keyOf(over)} onChange={(event) => setOver(root, event.currentTarget.value)}>
              <option value="">as found</option>
              {beside.map((names) => (
                <option key={keyOf(names)} value={keyOf(names)}>
                  {names.join(" + ")}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <Combobox
        label="Input to try other values of"
        placeholder="Find an input to try out"
        find={(query) => choices(query, root)}
        choose={add}
      />
      {values.length === 0 ? (
        <p class="small q2">Take any input and move it: supply, plate, belt, a cut. The numbers follow at once, and no file is touched.</p>
      ) : null}
      <ul class="tried">
        {values.map((v) => (
          <Tried key={v.address} value={v} input={inputs[v.address]} change={change} drop={() => drop(v.address)} />
        ))}
      </ul>
      {values.length === 0 ? null : (
        <>
          <Flips root={root} columns={columns} over={over} />
          <p class="acts">
            <button type="button" class="btn" onClick={() => setKeeping(true)}>
              Keep as an option …
            </button>
            <button
              type="button"
              class="btn quiet"
              onClick={() => {
                setTried([]);
                ownNow();
              }}
            >
              Take all back
            </button>
          </p>
        </>
      )}
      {isKeeping ? <KeepOption root={root} needs={over} values={values} taken={taken} close={() => setKeeping(false)} /> : null}
    </section>
  );
}

/** Moving a value looks at its column. */
function choose(root: string, over: Names): void {
  if (route.value.own.get("at") === "tried") return;
  go({ ...route.value, own: new Map(route.value.own).set("at", "tried"), options: over.map((name) => `${root}/${name}`) }, "replace");
}

function setOver(root: string, key: string): void {
  const own = new Map(route.value.own).set("over", key);
  const isAt = own.get("at") === "tried";
  const options = key.split("+").filter((name) => name !== "");
  go({ ...route.value, own, ...(isAt ? { options: options.map((name) => `${root}/${name}`) } : {}) });
}

/** As many are offered at once. */
const mostChoices = 12;

function choices(query: string, root: string): readonly { id: string; says: string; detail: string }[] {
  const infos = household.value?.inputs ?? {};
  const all = Object.values(answer.value?.inputs ?? {})
    .filter((i) => isMine(i.address, root) && (i.form === "quantity" || i.form === "word"))
    .map((input) => ({ id: input.address, says: `${input.says} ${thingName(input.item)}`, symbol: infos[input.id]?.symbol ?? "", input }));
  return found(query, all, mostChoices).map(({ id, input }) => ({
    id,
    says: [capital(input.says), thingName(input.item)].filter((word) => word !== "").join(", "),
    detail: prettyUnit(input.text),
  }));
}

interface TriedProps {
  readonly value: TriedValue;
  readonly input: InputAnswer | undefined;
  readonly change: (next: TriedValue) => void;
  readonly drop: () => void;
}

function Tried({ value, input, change, drop }: TriedProps): JSX.Element {
  const { address, text } = value;
  const name = input ? [capital(input.says), thingName(input.item)].filter((word) => word !== "").join(", ") : address;
  const refused = newest.value?.refused.find((r) => r.address === address)?.says;
  return (
    <li>
      <div class="name">
        <a href={workingLink(address)} data-opens="working" class="number">
          {name}
        </a>
        <button type="button" class="x" aria-label={`Stop trying ${name}`} onClick={drop}>
          <Icon name="close" size={12} />
        </button>
      </div>
      {input?.form === "word" ? (
        <select aria-label={name} value={text} onChange={(event) => change({ ...value, text: event.currentTarget.value })}>
          {input.words.map((word) => (
            <option key={word}>{word}</option>
          ))}
        </select>
      ) : input ? (
        <Slider value={value} input={input} name={name} change={change} isRefused={refused !== undefined} />
      ) : (
        <p class="small q2">There is no such input in this shop.</p>
      )}
      <p
        class={`small under ${refused === undefined ? "q" : "wrong"}`}
        id={`under-${address}`}
        role={refused === undefined ? undefined : "alert"}
      >
        {refused ?? asWritten(input)}
      </p>
    </li>
  );
}

/** What the files say: the answer itself has the value that is tried. */
function asWritten(input: InputAnswer | undefined): string {
  const before = input?.over[0];
  if (input?.origin.name !== "tried") return "as found";
  return before ? `instead of ${prettyUnit(before.text)}, ${before.origin.says}` : "nobody wrote one yet";
}

interface SliderProps extends Omit<TriedProps, "drop" | "input"> {
  readonly input: InputAnswer;
  readonly name: string;
  readonly isRefused: boolean;
}

function Slider({ value, input, name, change, isRefused }: SliderProps): JSX.Element {
  const kind = input.kind as Kind; // a quantity has one
  const range = value.range ?? rangeAround(value.text, kind) ?? "";
  const span = range === "" ? "type a range, such as 5 to 60 m" : spanOf(range, kind);
  const at = typeof span === "string" ? null : positionOf(value.text, kind, span);
  const { address } = value;
  return (
    <div class="slide">
      {typeof span === "string" ? (
        <input type="range" disabled aria-label={name} />
      ) : (
        <input
          type="range"
          aria-label={name}
          aria-valuetext={value.text}
          min={span.low}
          max={span.high}
          step={span.step}
          value={at ?? span.low}
          onInput={(event) => change({ ...value, text: textAt(event.currentTarget.valueAsNumber, span) })}
        />
      )}
      <input
        type="text"
        class={`entry num${isRefused ? " bad" : ""}`}
        aria-label={`${name}, value`}
        aria-invalid={isRefused}
        aria-describedby={`under-${address}`}
        value={value.text}
        onInput={(event) => change({ ...value, text: event.currentTarget.value })}
      />
      <label class="range small q">
        from … to
        <input
          type="text"
          class={`entry${typeof span === "string" && range !== "" ? " bad" : ""}`}
          aria-label={`${name}, range of the slider`}
          title={typeof span === "string" ? span : undefined}
          value={range}
          placeholder="5 to 60 m"
          onInput={(event) => change({ ...value, range: event.currentTarget.value })}
        />
      </label>
    </div>
  );
}

/** Checks that have another verdict with the values than without them. */
function Flips({ root, columns: given, over }: { root: string; columns: readonly Column[]; over: Names }): JSX.Element {
  const columns = useLive(given);
  const tried = columns.find((c) => c.isTried);
  const base = columns.find((c) => !c.isTried && isSame(c.names, over));
  if (!tried?.reply || !base?.reply) return <p class="small q">…</p>;
  const before = new Map(base.reply.checks.map((c) => [c.address, c.now]));
  const flips = tried.reply.checks.flatMap((c) => {
    const was = before.get(c.address) ?? null;
    return isMine(c.address, root) && was && c.now && was.verdict !== c.now.verdict ? [{ ...c, was, now: c.now }] : [];
  });
  return (
    <div class={`flips${tried.isStale ? " stale" : ""}`} aria-live="polite">
      <h3>
        {flips.length === 0 ? "No verdict changes" : `${counted(flips.length, "verdict")} ${flips.length === 1 ? "changes" : "change"}`}
      </h3>
      <ul>
        {flips.map((f) => (
          <li key={f.address}>
            <VerdictWord verdict={f.was.verdict} size={12} />
            <span class="q" aria-label="becomes">
              →
            </span>
            <VerdictWord verdict={f.now.verdict} size={12} />
            <a href={workingLink(f.address)} class="number" data-opens="working">
              {f.asks} <span class="q">{thingName(f.item)}</span>
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}
