// All margins of one variant as strokes on the scale of the margin strips: a small face by which variants are told apart at a glance.
import type { Verdict } from "../kernel/verdict.ts";
import { fraction } from "./margin-strip.ts";
import { drawing, el, line, short } from "./svg.ts";

interface RugMark {
  readonly verdict: Verdict;
  /** Capacity over demand, nominal. */
  readonly nominal: number;
}

const height = 26;
/** Strokes end here above and below; the line at 1 goes all the way. */
const air = 5;

/** One stroke for each margin, the line at 1, and a base line; dashed where the verdict is open. Beyond the scale a stroke stands at its end. */
export function marginRug(marks: readonly RugMark[], width: number): string {
  const x = (margin: number): number => 2 + fraction(margin) * (width - 4);
  const count = (verdict: Verdict): number => marks.filter((m) => m.verdict === verdict).length;
  const one = x(1);
  const label = `Margins: ${count("fails")} fail, ${count("open")} open, ${count("tight")} tight, ${count("holds")} hold`;
  // What holds is drawn first, so that what fails lies on top.
  const drawn = (["holds", "tight", "open", "fails"] as const).flatMap((verdict) =>
    marks
      .filter((m) => m.verdict === verdict)
      .map(({ nominal }) =>
        el("path", {
          d: `M${short(x(nominal))} ${air}V${height - air}`,
          class: `vs ${verdict}`,
          "stroke-width": verdict === "fails" ? "2" : "1.3",
          "stroke-dasharray": verdict === "open" ? "2.5 2" : undefined,
        }),
      ),
  );
  return drawing(
    { label, width, height },
    el("path", { d: `M0 ${height - air + 0.5}H${short(width)}`, class: "gm", "stroke-width": 1 }),
    ...drawn,
    line({ x: one, y: 0 }, { x: one, y: height }, { class: "i", "stroke-width": "1.25" }),
  );
}
