// The figure along one value as a curve with its band, to be read with a cursor and taken away as a file.
import type { JSX } from "preact";
import { useId } from "preact/hooks";
import { prettyUnit, type System, write } from "../../../kernel/display.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { readQuantity } from "../../../kernel/quantity.ts";
import { plot } from "../../../pictures/plot.ts";
import { plotCsv } from "../../../pictures/plot-read.ts";
import type { PlotSpec } from "../../../pictures/plot-spec.ts";
import { runPanel } from "../../../pictures/run-panel.ts";
import { standalone } from "../../../pictures/standalone.ts";
import { capital } from "../model/names.ts";
import { offer } from "../parts/offer.ts";
import { Cursor } from "../parts/picture.tsx";
import { Svg } from "../parts/svg.tsx";
import { useWidth } from "../parts/width.ts";
import picturesCss from "../pictures.css?raw";
import tokensCss from "../tokens.css?raw";
import type { FigureHead, FormField } from "../worker/working-out.ts";
import type { Places } from "./places.ts";
import { type Running, useRun } from "./run.ts";
import { typed } from "./typed.ts";

interface CurveProps {
  readonly head: FigureHead;
  readonly field: FormField;
  readonly places: Places;
  readonly system: System;
}

export function Curve({ head, field, places, system }: CurveProps): JSX.Element {
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
