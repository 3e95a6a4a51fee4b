// The margin of a check on the shared scale.
import type { JSX } from "preact";
import { useId } from "preact/hooks";
import type { CheckAnswer } from "../../../kernel/answer.ts";
import { marginScale, marginStrip } from "../../../pictures/margin-strip.ts";
import { Svg } from "./svg.tsx";

export function Strip({ check, height }: { check: CheckAnswer; height?: number }): JSX.Element {
  const { verdict, margin, yesNo, reserve } = check;
  const id = useId();
  const at = (x: typeof margin.nominal): number | null => (typeof x === "number" ? x : "never" in x ? Infinity : null);
  const nominal = yesNo ? null : at(margin.nominal);
  const [low, high] = [at(margin.low), at(margin.high)];
  const band = nominal !== null && low !== null && high !== null && low !== high ? { low, high } : {};
  const text = marginStrip(`s${id}`, { verdict, nominal, ...band, ...(yesNo ? {} : { reserve }) }, height);
  return <Svg class="st" text={text} />;
}

export function StripScale(): JSX.Element {
  return <Svg class="st" text={marginScale()} />;
}
