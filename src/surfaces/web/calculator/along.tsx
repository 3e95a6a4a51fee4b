// The figure along a range of one of its values: worked out step by step, drawn with its band, to be read with a cursor and taken away.
import type { JSX } from "preact";
import { useEffect, useId, useRef, useState } from "preact/hooks";
import { prettyUnit, type System, write } from "../../../kernel/display.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { readQuantity } from "../../../kernel/quantity.ts";
import { plot } from "../../../pictures/plot.ts";
import { plotCsv } from "../../../pictures/plot-read.ts";
import type { PlotSpec } from "../../../pictures/plot-spec.ts";
import { runPanel } from "../../../pictures/run-panel.ts";
import { standalone } from "../../../pictures/standalone.ts";
import { rangeAround } from "../compare/span.ts";
import { ask } from "../model/desk.ts";
import { capital } from "../model/names.ts";
import { offer } from "../parts/offer.ts";
import { Cursor } from "../parts/picture.tsx";
import { Seg } from "../parts/seg.tsx";
import { Svg } from "../parts/svg.tsx";
import { useWidth } from "../parts/width.ts";
import picturesCss from "../pictures.css?raw";
import tokensCss from "../tokens.css?raw";
import type { AlongReply, FigureHead, FormField } from "../worker/working-out.ts";
import { type Places, placesOf, usualSteps } from "./places.ts";
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
      {field && places !== null && typeof places !== "string" ? <Plot head={head} field={field} places={places} system={system} /> : null}
    </section>
  );
}

/** So many values are asked for at once: between two questions an edit comes in, and a stop. */
const atOnce = 6;

const noRun: AlongReply = { unit: "", nominal: [], low: [], high: [], says: null };

const joined = (all: AlongReply, more: AlongReply): AlongReply => ({
  unit: more.unit === "" ? all.unit : more.unit,
  nominal: [...all.nominal, ...more.nominal],
  low: [...all.low, ...more.low],
  high: [...all.high, ...more.high],
  says: all.says ?? more.says,
});

interface Running {
  /** The last run that came to an end, or was stopped: it stays on the screen until the next one has. */
  readonly run: { readonly reply: AlongReply; readonly x: readonly number[]; readonly unit: string } | null;
  readonly done: number;
  readonly isRunning: boolean;
  readonly stop: () => void;
}

const pause = 200; // ms: letters come in bursts

/** Works along the places, a few at a time. */
function useRun(figure: string, values: ReadonlyMap<string, string>, along: string, places: Places, system: System): Running {
  const [run, setRun] = useState<Running["run"]>(null);
  const [done, setDone] = useState<number | null>(null);
  const isStopped = useRef(false);
  const key = JSON.stringify([figure, [...values].filter(([name]) => name !== along), along, places.texts, system]);
  useEffect(() => {
    let isCurrent = true;
    isStopped.current = false;
    const work = async (): Promise<void> => {
      let all = noRun;
      for (let i = 0; i < places.texts.length && !isStopped.current; i += atOnce) {
        setDone(i);
        const texts = places.texts.slice(i, i + atOnce);
        const reply = await ask("workAlong", { figure, values: Object.fromEntries(values), along, texts, system });
        if (!isCurrent) return;
        all = joined(all, reply);
      }
      setDone(null);
      setRun({ reply: all, x: places.x.slice(0, all.nominal.length), unit: places.unit });
    };
    const later = setTimeout(() => {
      work().catch((error: unknown) => {
        if (!isCurrent) return;
        setDone(null);
        setRun({ reply: { ...noRun, says: error instanceof Error ? error.message : String(error) }, x: [], unit: "" });
      });
    }, pause);
    return () => {
      isCurrent = false;
      clearTimeout(later);
    };
    // Everything that counts is in the key.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [key]);
  const stop = (): void => {
    isStopped.current = true;
  };
  return { run, done: done ?? 0, isRunning: done !== null, stop };
}

function Plot({ head, field, places, system }: { head: FigureHead; field: FormField; places: Places; system: System }): JSX.Element {
  const [ref, width] = useWidth<HTMLDivElement>();
  const id = useId();
  const { values, scale } = typed.value;
  const { run, done, isRunning, stop } = useRun(head.id, values, field.name, places, system);
  const numbers = (run?.reply.nominal ?? []).filter((y) => Number.isFinite(y)).length;
  const spec = run === null || width === 0 || numbers < 2 ? null : specOf({ head, field, run, width, prefix: `a${id}`, scale, values });
  const name = `${head.id}-along-${field.name}`;
  return (
    <figure class="pic">
      <figcaption class="small q">
        <span role="status">{isRunning ? `${done} of ${places.texts.length} worked out` : ""}</span>
        {isRunning ? (
          <button type="button" class="link" onClick={stop}>
            Stop
          </button>
        ) : spec === null ? null : (
          <>
            <button
              type="button"
              class="link"
              onClick={() => offer(`${name}.svg`, "image/svg+xml", standalone(plot(spec), [tokensCss, picturesCss]))}
            >
              SVG
            </button>
            <button type="button" class="link" onClick={() => offer(`${name}.csv`, "text/csv", plotCsv(spec))}>
              CSV
            </button>
          </>
        )}
      </figcaption>
      <div ref={ref} class="draws">
        {spec === null ? null : (
          <>
            <Svg text={plot(spec)} />
            <Cursor spec={spec} title={capital(head.says)} />
          </>
        )}
      </div>
      {run?.reply.says ? (
        <p class="small q2">
          {spec === null ? "No number along it" : "Gaps"}: {run.reply.says}.
        </p>
      ) : null}
    </figure>
  );
}

const height = 340; // px

interface SpecProps {
  readonly head: FigureHead;
  readonly field: FormField;
  readonly run: NonNullable<Running["run"]>;
  readonly width: number;
  readonly prefix: string;
  readonly scale: "linear" | "log";
  readonly values: ReadonlyMap<string, string>;
}

function specOf({ head, field, run, width, prefix, scale, values }: SpecProps): PlotSpec {
  const { x, reply } = run;
  const { nominal, low, high } = reply;
  const unit = prettyUnit(reply.unit);
  const here = presentOf(values.get(field.name), field.kind, run);
  const finite = nominal.filter((y) => Number.isFinite(y)).map((y) => Number(y.toPrecision(3)));
  return {
    ...runPanel({ name: head.symbol || head.says, unit, x, nominal, low, high }),
    ...(here === null ? {} : { limits: [{ on: "x" as const, at: here, words: "as typed", role: "quiet" as const }] }),
    prefix,
    title: capital(head.says),
    label: `${capital(head.says)} along ${field.says}: from ${finite[0]} to ${finite.at(-1)} ${unit}`,
    width,
    height,
    x: { label: field.says, unit: prettyUnit(run.unit), scale },
  };
}

/** Where the value that is typed stands on the axis: its unit may be another than that of the range. */
function presentOf(
  text: string | undefined,
  kind: Kind | null,
  { x, unit }: { readonly x: readonly number[]; readonly unit: string },
): number | null {
  const read = text === undefined || kind === null ? null : readQuantity(text, kind);
  if (!read?.ok || kind === null) return null;
  const at = Number(write(read.nominal, kind, unit).split(" ")[0]);
  const [from, to] = [x[0], x.at(-1)];
  return from === undefined || to === undefined || at < from || at > to ? null : at;
}
