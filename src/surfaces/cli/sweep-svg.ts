// A sweep as a drawing in a file of its own.
import { prettyUnit } from "../../kernel/display.ts";
import { plot } from "../../pictures/plot.ts";
import type { Panel } from "../../pictures/plot-spec.ts";
import { standalone } from "../../pictures/standalone.ts";
import pictures from "../web/pictures.css?raw";
import tokens from "../web/tokens.css?raw";
import type { Run, Sweep } from "./swept.ts";

const width = 760;
const height = 420;

export function sweepSvg(s: Sweep): string {
  const [first, second] = s.runs;
  if (!first) return "";
  const drawing = plot({
    prefix: "sweep",
    title: first.says,
    label: `${first.says} along ${s.input.says}`,
    width,
    height: second ? 2 * height : height,
    x: { label: s.input.says, unit: prettyUnit(s.input.unit) },
    ...panel(s, first),
    ...(second ? { below: panel(s, second) } : {}),
  });
  return standalone(drawing, [tokens, pictures]);
}

function panel(s: Sweep, r: Run): Panel {
  const x = s.input.values;
  // What never ends and what has no value are gaps.
  const drawn = (v: readonly number[]): number[] => v.map((y) => (Number.isFinite(y) ? y : Number.NaN));
  const banded = x.map((_, k) => k).filter((k) => Number.isFinite(r.low[k]) && Number.isFinite(r.high[k]));
  const at = (v: readonly number[]): number[] => banded.map((k) => v[k] ?? Number.NaN);
  const hasBand = banded.length > 1 && banded.some((k) => r.low[k] !== r.high[k]);
  return {
    y: { label: r.symbol || r.says, unit: prettyUnit(r.unit) },
    series: [{ name: r.symbol || r.says, x, y: drawn(r.nominal), role: "base" }],
    ...(hasBand ? { bands: [{ x: at(x), low: at(r.low), high: at(r.high), words: "5 % to 95 %" }] } : {}),
  };
}
