// A sweep as a drawing in a file of its own.
import { prettyUnit } from "../../kernel/display.ts";
import { plot } from "../../pictures/plot.ts";
import type { Panel } from "../../pictures/plot-spec.ts";
import { runPanel } from "../../pictures/run-panel.ts";
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

function panel(s: Sweep, { symbol, says, unit, nominal, low, high }: Run): Panel {
  return runPanel({ name: symbol || says, unit: prettyUnit(unit), x: s.input.values, nominal, low, high });
}
