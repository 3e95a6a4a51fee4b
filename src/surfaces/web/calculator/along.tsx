// Along which value a figure is plotted, and over what.
import type { JSX } from "preact";
import { prettyUnit, type System } from "../../../kernel/display.ts";
import { rangeAround } from "../compare/span.ts";
import { Seg } from "../parts/seg.tsx";
import type { FigureHead, FormField } from "../worker/working-out.ts";
import { Curve } from "./curve.tsx";
import { placesOf, usualSteps } from "./places.ts";
import { type, typed } from "./typed.ts";

interface AlongProps {
  readonly head: FigureHead;
  readonly fields: readonly FormField[];
  readonly system: System;
}

export function Along({ head, fields, system }: AlongProps): JSX.Element | null {
  const { along, range, steps, scale, values } = typed.value;
  const fits = fields.filter((f) => f.kind !== null && f.form !== "list" && f.form !== "pair" && f.words.length === 0);
  const field = fits.find((f) => f.name === along);
  if (fits.length === 0) return null;
  const kind = field?.kind ?? null;
  const usual = field && kind !== null ? (rangeAround(values.get(field.name) ?? field.typical ?? "", kind) ?? "") : "";
  const places =
    kind === null
      ? null
      : range === "" && usual === ""
        ? "Type a range, such as 100 to 200 mm."
        : placesOf(range === "" ? usual : range, steps, scale, kind);
  return (
    <section class="along" aria-labelledby="along">
      <div class="sec">
        <h2 id="along">Along one value</h2>
      </div>
      <div class="along-fields">
        <label>
          <span class="small q">along</span>
          <select value={field?.name ?? ""} onChange={(event) => type({ along: event.currentTarget.value, range: "" })}>
            <option value="">no plot</option>
            {fits.map((f) => (
              <option key={f.name} value={f.name}>
                {f.name}, {f.says}
              </option>
            ))}
          </select>
        </label>
        {field ? (
          <>
            <label>
              <span class="small q">from … to</span>
              <input
                type="text"
                class={`entry${typeof places === "string" ? " bad" : ""}`}
                value={range}
                placeholder={prettyUnit(usual)}
                aria-describedby="along-says"
                aria-invalid={typeof places === "string"}
                onInput={(event) => type({ range: event.currentTarget.value })}
              />
            </label>
            <label class="few">
              <span class="small q">steps</span>
              <input
                type="text"
                inputmode="numeric"
                class="entry num"
                value={steps}
                placeholder={String(usualSteps)}
                aria-describedby="along-says"
                onInput={(event) => type({ steps: event.currentTarget.value })}
              />
            </label>
            <Seg
              label="Scale"
              value={scale}
              choices={[
                { value: "linear", says: "linear" },
                { value: "log", says: "log", title: "Logarithmic" },
              ]}
              choose={(chosen) => type({ scale: chosen })}
            />
          </>
        ) : null}
      </div>
      <p id="along-says" class="small wrong" role={typeof places === "string" ? "alert" : undefined}>
        {typeof places === "string" ? places : ""}
      </p>
      {field && places !== null && typeof places !== "string" ? <Curve head={head} field={field} places={places} system={system} /> : null}
    </section>
  );
}
