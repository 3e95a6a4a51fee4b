// The machine drawing, laid out for the width it gets.
import type { JSX } from "preact";
import { machineDrawing } from "../../../pictures/blocks.ts";
import { banded, newest } from "../model/desk.ts";
import { drawingOf } from "../model/drawing.ts";
import { machineName } from "../model/names.ts";
import { linkTo, route } from "../model/place.ts";
import { Svg } from "./svg.tsx";
import { useWidth } from "./width.ts";

export function MachineDrawing({ root }: { root: string }): JSX.Element {
  const [ref, width] = useWidth<HTMLElement>();
  const shown = banded.value ?? newest.value;
  const text =
    shown === null || width === 0
      ? ""
      : machineDrawing(
          drawingOf({
            answer: shown.answer,
            plan: shown.plan,
            root,
            options: route.value.options,
            width,
            hrefOf: (room) => linkTo({ page: "room", machine: root, room }),
          }),
        );
  return (
    <section ref={ref} class="draw" aria-label={`Machine drawing, ${machineName(root)}`}>
      <Svg text={text} />
    </section>
  );
}
