// What if: any input tried out, several at once; which verdicts that changes; kept, if at all, as an option.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { prettyUnit, type System } from "../../../kernel/display.ts";
import { answer, banded, household } from "../model/desk.ts";
import { found } from "../model/match.ts";
import { capital } from "../model/names.ts";
import { go, route } from "../model/place.ts";
import { ownNow } from "../model/soon.ts";
import { thingName } from "../model/things.ts";
import { Combobox } from "../parts/combobox.tsx";
import type { Column } from "./column.ts";
import { isMine, keyOf, type Names, namesOf } from "./columns.ts";
import { Flips } from "./flips.tsx";
import { KeepOption } from "./keep-option.tsx";
import { startText, usualRange } from "./span.ts";
import { setTried, triedValues } from "./tried.ts";
import type { TriedValue } from "./tried-address.ts";
import { Tried } from "./tried-value.tsx";

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
  const own = new Map(route.value.own);
  if (key === "") own.delete("over");
  else own.set("over", key);
  const isAt = own.get("at") === "tried";
  go({ ...route.value, own, ...(isAt ? { options: namesOf(key).map((name) => `${root}/${name}`) } : {}) });
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
