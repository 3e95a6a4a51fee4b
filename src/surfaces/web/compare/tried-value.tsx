// One value being tried out: a slider over its range and a field beside it; a word is chosen from its list.
import type { JSX } from "preact";
import type { InputAnswer } from "../../../kernel/answer.ts";
import { prettyUnit } from "../../../kernel/display.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { newest } from "../model/desk.ts";
import { capital } from "../model/names.ts";
import { workingLink } from "../model/place.ts";
import { thingName } from "../model/things.ts";
import { Icon } from "../parts/icon.tsx";
import { positionOf, rangeAround, spanOf, textAt } from "./span.ts";
import type { TriedValue } from "./tried-address.ts";

interface TriedProps {
  readonly value: TriedValue;
  readonly input: InputAnswer | undefined;
  readonly change: (next: TriedValue) => void;
  readonly drop: () => void;
}

export function Tried({ value, input, change, drop }: TriedProps): JSX.Element {
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
