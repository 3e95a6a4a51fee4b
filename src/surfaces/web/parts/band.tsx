// The band of one number, with what is needed of it.
import type { JSX } from "preact";
import { useId } from "preact/hooks";
import { bandPlot } from "../../../pictures/band-plot.ts";
import { prettyUnit } from "../../../kernel/display.ts";
import type { BandNumbers } from "../worker/workings.ts";
import { Svg } from "./svg.tsx";
import { useWidth } from "./width.ts";

export interface Need {
  readonly at: number;
  readonly words: string;
  readonly side: "above" | "below";
}

export function BandPicture({ numbers, need, says }: { numbers: BandNumbers; need: Need | null; says: string }): JSX.Element {
  const [ref, width] = useWidth<HTMLDivElement>();
  const id = useId();
  const unit = prettyUnit(numbers.unit);
  const three = (x: number): string => String(Number(x.toPrecision(3)));
  const label = `${says}: band ${three(numbers.low)} to ${three(numbers.high)} ${unit}, nominal ${three(numbers.nominal)}${need ? `, ${need.words}` : ""}`;
  const text = width === 0 ? "" : bandPlot({ prefix: `b${id}`, label, width, ...numbers, unit, ...(need ? { need } : {}) });
  return (
    <div ref={ref} class="band">
      <Svg text={text} />
    </div>
  );
}
