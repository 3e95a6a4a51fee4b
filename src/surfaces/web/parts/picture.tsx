// A picture of a room: drawn for its width, with SVG and CSV to take away, and values under a cursor that pointer and arrow keys move.
import type { JSX, TargetedKeyboardEvent } from "preact";
import { useEffect, useId, useMemo, useState } from "preact/hooks";
import { plotData } from "../../../pictures/plot-read.ts";
import type { PlotSpec } from "../../../pictures/plot-spec.ts";
import { standalone } from "../../../pictures/standalone.ts";
import picturesCss from "../pictures.css?raw";
import tokensCss from "../tokens.css?raw";
import { useAsk } from "../model/asking.ts";
import { variantWords } from "../model/names.ts";
import { route } from "../model/place.ts";
import { thingName } from "../model/things.ts";
import type { PictureHead } from "../worker/pictures.ts";
import { offer } from "./offer.ts";
import { Svg } from "./svg.tsx";
import { useWidth } from "./width.ts";

/** `isOne`: no other thing has this picture, so that nothing needs telling apart. */
export function Picture({ head, isOne }: { head: PictureHead; isOne: boolean }): JSX.Element {
  const [ref, width] = useWidth<HTMLDivElement>();
  const prefix = `p${useId()}`;
  const option = variantWords(route.value.options);
  const { reply, isStale, failed } = useAsk("picture", width === 0 ? null : { ...head, width, prefix, option });
  // The last drawing stays while the next one is laid out for another width or other numbers.
  const [last, setLast] = useState(reply);
  useEffect(() => {
    if (reply !== null) setLast(reply);
  }, [reply]);
  const drawn = reply ?? last;
  const name = `${head.item.replaceAll("/", "-")}-${head.id}`;
  return (
    <figure class={`pic${isStale || reply === null ? " stale" : ""}`}>
      <figcaption class="small q">
        {drawn === null ? null : (
          <>
            {isOne ? null : thingName(head.item)}
            <button
              type="button"
              class="link"
              onClick={() => offer(`${name}.svg`, "image/svg+xml", standalone(drawn.svg, [tokensCss, picturesCss]))}
            >
              SVG
            </button>
            {drawn.csv === undefined ? null : (
              <button type="button" class="link" onClick={() => offer(`${name}.csv`, "text/csv", drawn.csv ?? "")}>
                CSV
              </button>
            )}
          </>
        )}
      </figcaption>
      <div ref={ref} class="draws">
        {failed === null ? null : <p class="q">This picture could not be drawn: {failed}</p>}
        {drawn === null ? null : <Svg text={drawn.svg} />}
        {drawn?.plot === undefined ? null : <Cursor spec={drawn.plot as PlotSpec} title={head.title} />}
      </div>
    </figure>
  );
}

/** A step of the arrow keys. */
const stride = 4; // px

/** Where a pointer or the arrow keys stand, a line and the values of every curve there. */
export function Cursor({ spec, title }: { spec: PlotSpec; title: string }): JSX.Element {
  const data = useMemo(() => plotData(spec), [spec]);
  const [at, setAt] = useState<number | null>(null);
  const [area] = data.panels.map((p) => p.area);
  if (!area) return <></>;
  const last = data.panels.at(-1)?.area ?? area;
  const [left, right] = [area.x, area.x + area.width];
  const inside = (x: number): number => Math.min(right, Math.max(left, x));
  const key = (event: TargetedKeyboardEvent<HTMLDivElement>): void => {
    const by = event.key === "ArrowRight" ? stride : event.key === "ArrowLeft" ? -stride : 0;
    if (event.key === "Escape" && at !== null) {
      event.preventDefault();
      setAt(null);
    }
    if (by === 0) return;
    event.preventDefault();
    setAt((x) => inside((x ?? (left + right) / 2) + by * (event.shiftKey ? 5 : 1)));
  };
  const reading = at === null ? null : data.at(at);
  return (
    <div
      class="cursor"
      tabIndex={0}
      role="slider"
      aria-label={`${title}: values along ${spec.x.label === "" ? "x" : spec.x.label}`}
      aria-valuemin={data.x.toValue(left)}
      aria-valuemax={data.x.toValue(right)}
      aria-valuenow={data.x.toValue(at ?? (left + right) / 2)}
      aria-valuetext={reading === null ? "arrow keys read values" : readingText(spec, reading)}
      style={{ left: `${left}px`, top: `${area.y}px`, width: `${right - left}px`, height: `${last.y + last.height - area.y}px` }}
      onPointerMove={(event) => setAt(inside(left + event.offsetX))}
      onPointerLeave={() => setAt(null)}
      onBlur={() => setAt(null)}
      onKeyDown={key}
    >
      {at === null || reading === null ? null : (
        <>
          <span class="hair" style={{ left: `${at - left}px` }} />
          <div class={`readout${at > (left + right) / 2 ? " to-left" : ""}`} style={{ left: `${at - left}px` }}>
            <p class="b">{`${short(reading.x)} ${spec.x.unit}`}</p>
            {reading.values.map((v) => (
              <p key={v.name}>
                <span>{v.name}</span> <b>{short(v.value)}</b> <span class="q">{v.unit}</span>
              </p>
            ))}
          </div>
        </>
      )}
    </div>
  );
}

const short = (x: number): string => String(Number(x.toPrecision(4)));

const readingText = (spec: PlotSpec, reading: ReturnType<ReturnType<typeof plotData>["at"]>): string =>
  [`${short(reading.x)} ${spec.x.unit}`, ...reading.values.map((v) => `${v.name} ${short(v.value)} ${v.unit}`)].join(", ");
