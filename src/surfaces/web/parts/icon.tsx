// One icon beside a word.
import type { JSX } from "preact";
import { icon, type IconName } from "../../../pictures/icons.ts";
import { Svg } from "./svg.tsx";

export function Icon({ name, size = 16 }: { name: IconName; size?: number }): JSX.Element {
  return <Svg class="ic" text={icon(name, size)} />;
}
