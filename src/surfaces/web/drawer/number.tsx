// The working of a figure, an input or a sum: formula, the same with numbers, what it needs and where that came from, band, what decides it.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { BandPicture, type Need } from "../parts/band.tsx";
import { bandWords, numberAndUnit } from "../parts/amount-words.ts";
import { Icon } from "../parts/icon.tsx";
import { Shares } from "../parts/shares.tsx";
import { Source } from "../parts/source.tsx";
import { Svg } from "../parts/svg.tsx";
import { VerdictWord } from "../parts/verdict.tsx";
import { prettyUnit } from "../../../kernel/display.ts";
import { escaped } from "../../../pictures/svg.ts";
import type { CheckAnswer } from "../../../kernel/answer.ts";
import type { NeedAnswer, Working } from "../../../kernel/working.ts";
import { useAsk } from "../model/asking.ts";
import { banded } from "../model/desk.ts";
import { capital } from "../model/names.ts";
import { counted } from "../model/numbers.ts";
import { workingLink } from "../model/place.ts";
import { worst } from "../model/rooms.ts";
import { thingName } from "../model/things.ts";
import type { BandNumbers, WorkingReply } from "../worker/workings.ts";
import { DrawerHead } from "./head.tsx";
import { fieldLink, MeasureBox } from "./measure-box.tsx";

export function NumberWorking({ address }: { address: string }): JSX.Element {
  const { reply, isStale, failed } = useAsk("working", { address });
  if (failed !== null) return <DrawerHead address={address} title={`This cannot be worked out: ${failed}`} />;
  if (reply === null) return <DrawerHead address={address} title="…" />;
  return <Shown address={address} reply={reply} isStale={isStale} />;
}

function Shown({ address, reply, isStale }: { address: string; reply: WorkingReply | null; isStale: boolean }): JSX.Element {
  if (reply === null) return <DrawerHead address={address} title="Nothing stands at this address" />;
  const w = reply.working;
  const isNominal = reply.mode === "nominal" || isStale;
  const checks = (banded.value?.answer.checks ?? []).filter((c) => w.usedBy.includes(c.address));
  const verdict = worst(checks.map((c) => c.verdict));
  const item = w.input?.item ?? banded.value?.answer.figures[w.address]?.item;
  const thing = item === undefined ? "" : thingName(item);
  const top = w.shares.find((s) => s.measure !== "");
  return (
    <>
      <DrawerHead address={w.address} title={`${capital(w.says)}${thing === "" ? "" : `, ${thing}`}`}>
        <Headline reply={reply} isNominal={isNominal} verdict={verdict === null ? null : <VerdictWord verdict={verdict} />} />
      </DrawerHead>
      <Formula reply={reply} />
      {w.input ? <InputFacts w={w} /> : null}
      <Needs reply={reply} isNominal={isNominal} />
      <Spread w={w} plot={reply.plot} checks={checks} isNominal={isNominal} />
      {top ? <MeasureBox wanted={{ input: top.address, says: top.says, measure: top.measure }} /> : null}
      <Footnotes w={w} checks={checks} />
    </>
  );
}

function Headline({ reply, isNominal, verdict }: { reply: WorkingReply; isNominal: boolean; verdict: JSX.Element | null }): JSX.Element {
  const { amount, input, estimated, coarse } = reply.working;
  if (amount === null) {
    return (
      <p class="big">
        <b class="word">{input?.text ?? "no single number"}</b>
      </p>
    );
  }
  const { number, unit } = numberAndUnit(amount.text);
  const band = bandWords(amount);
  const isNumber = typeof amount.nominal === "number";
  return (
    <p class="big">
      {reply.symbol === "" ? null : <Svg class="symbol" text={reply.symbol} />}
      <b class={isNumber ? "" : "word"}>{number}</b>
      {unit === "" ? null : <span class="u">{unit}</span>}
      <span class={isNominal ? "q band-words" : "q2 band-words"}>{isNominal && band === "exact" ? "…" : band}</span>
      <Copy text={prettyUnit(amount.text)} />
      {estimated || coarse ? <span class="q small">{estimated ? "estimated" : "coarse"}</span> : null}
      {verdict}
    </p>
  );
}

/** The number with its unit, for another program. */
function Copy({ text }: { text: string }): JSX.Element {
  const [isDone, setDone] = useState(false);
  return (
    <button
      type="button"
      class="copy"
      title={`Copy ${text}`}
      aria-label={isDone ? "Copied" : `Copy ${text}`}
      onBlur={() => setDone(false)}
      onClick={() => void navigator.clipboard.writeText(text).then(() => setDone(true))}
    >
      <Icon name="copy" size={14} />
      {isDone ? <span class="small">copied</span> : null}
    </button>
  );
}

/** A formula and the same with its numbers; the formula alone while there are none. */
interface Typeset {
  readonly symbol: string;
  readonly working: Pick<Working, "mathml" | "mathmlNumbers" | "method" | "amount">;
}

export function Formula({ reply }: { reply: Typeset }): JSX.Element | null {
  const w = reply.working;
  if (w.mathml === null)
    return w.method === null ? null : (
      <p class="method">
        <span class="q">Worked out by: </span>
        {w.method}
      </p>
    );
  const result = w.amount ? prettyUnit(w.amount.text) : "";
  const rows = [w.mathml, ...(w.mathmlNumbers === null || w.mathmlNumbers === w.mathml ? [] : [w.mathmlNumbers])].map(insideOf);
  const line = (left: string, right: string): string =>
    `<mtr><mtd class="fr">${left}</mtd><mtd class="fl"><mrow><mo>=</mo>${right}</mrow></mtd></mtr>`;
  const all = [
    ...rows.map((right, i) => line(i === 0 ? insideOf(reply.symbol) : "", right)),
    ...(result === "" ? [] : [line("", `<mspace width="0.28em"></mspace><mtext>${escaped(result)}</mtext>`)]),
  ];
  const math = `<math display="block"><mtable displaystyle="true">${all.join("")}</mtable></math>`;
  return <Svg class="formula" tabIndex={0} role="group" aria-label="Formula, and the same with numbers" text={math} />;
}

/** What stands in a `math` element, its words set as print sets them. */
function insideOf(math: string): string {
  return math.replace(/^<math[^>]*>|<\/math>$/g, "").replace(/>([^<>]+)</g, (_, words: string) => `>${prettyUnit(words)}<`);
}

function Needs({ reply, isNominal }: { reply: WorkingReply; isNominal: boolean }): JSX.Element | null {
  const { needs } = reply.working;
  if (needs.length === 0) return null;
  return (
    <table class="it">
      <caption class="sr">What it needs</caption>
      <thead class="sr">
        <tr>
          <th scope="col">symbol</th>
          <th scope="col">value</th>
          <th scope="col">band</th>
          <th scope="col">from</th>
        </tr>
      </thead>
      <tbody>
        {needs.map((n) => (
          <tr key={n.name}>
            <th scope="row">
              {reply.symbols[n.name] ? (
                <>
                  <Svg text={reply.symbols[n.name] ?? ""} aria-hidden="true" />
                  <span class="sr">{n.name}</span>
                </>
              ) : (
                n.name
              )}
            </th>
            <td class="val">
              {prettyUnit(n.text)}
              <span class="says q small">{n.says}</span>
            </td>
            <td class={isNominal ? "q" : "q2"}>{isNominal && n.band === "exact" ? "" : bandOf(n)}</td>
            <td>
              <From need={n} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const bandOf = (n: NeedAnswer): string =>
  n.band === "" || n.is === "missing" ? "" : bandWords({ nominal: 0, text: n.text, band: n.band });

function From({ need }: { need: NeedAnswer }): JSX.Element {
  if (need.is === "missing") return <span class="q">{need.text}</span>;
  if (need.address === null) return <span class="q">given</span>;
  return (
    <a href={workingLink(need.address)}>
      {need.origin ? <Source origin={need.origin} written={null} /> : "working"}
      <span class="sr"> of {need.says}</span>
    </a>
  );
}

function InputFacts({ w }: { w: Working }): JSX.Element | null {
  const { input } = w;
  if (!input) return null;
  const field = fieldLink(input.address, input.room);
  return (
    <>
      <dl class="facts">
        <dt>from</dt>
        <dd>
          <Source origin={input.origin} written={input.written} /> {input.origin.says}
        </dd>
        {input.written !== null && input.written !== input.text ? (
          <>
            <dt>written</dt>
            <dd>{input.written}</dd>
          </>
        ) : null}
        {input.over.map((o) => (
          <>
            <dt>instead of</dt>
            <dd>
              {prettyUnit(o.text)}, {o.origin.says}
            </dd>
          </>
        ))}
        {input.measure === "" ? null : (
          <>
            <dt>find out</dt>
            <dd>{input.measure}</dd>
          </>
        )}
      </dl>
      {field === null ? null : (
        <p class="acts">
          <a class="btn" href={field}>
            Change it
          </a>
        </p>
      )}
    </>
  );
}

interface SpreadProps {
  readonly w: Working;
  readonly plot: BandNumbers | null;
  readonly checks: readonly CheckAnswer[];
  readonly isNominal: boolean;
}

function Spread({ w, plot, checks, isNominal }: SpreadProps): JSX.Element | null {
  if (plot === null || isNominal || plot.low === plot.high) return null;
  const shares = w.shares.slice(0, 6);
  return (
    <>
      <h3>Band, 5 to 95 %</h3>
      <BandPicture numbers={plot} need={needOf(w, plot, checks)} says={capital(w.says)} />
      {shares.length === 0 ? null : (
        <>
          <h3>What decides it</h3>
          <Shares shares={shares} />
        </>
      )}
    </>
  );
}

/** The other side of the check in which this number stands directly, in the plot's unit. */
function needOf(w: Working, plot: BandNumbers, checks: readonly CheckAnswer[]): Need | null {
  for (const c of checks) {
    const isCapacity = c.capacity?.address === w.address;
    const other = isCapacity ? c.demand : c.demand?.address === w.address ? c.capacity : null;
    if (!other || typeof other.amount.nominal !== "number" || typeof w.amount?.nominal !== "number" || w.amount.nominal === 0) continue;
    const at = (other.amount.nominal * plot.nominal) / w.amount.nominal;
    return { at, words: `${isCapacity ? "needed" : "there is"} ${prettyUnit(other.amount.text)}`, side: isCapacity ? "above" : "below" };
  }
  return null;
}

function Footnotes({ w, checks }: { w: Working; checks: readonly CheckAnswer[] }): JSX.Element {
  return (
    <div class="srcs small q">
      {w.assumes.length === 0 ? null : <p>Assuming {w.assumes.join("; ")}.</p>}
      {w.source === "" || w.input ? null : <p>Source: {w.source}.</p>}
      {checks.length === 0 ? null : (
        <details>
          <summary>Used by {counted(checks.length, "check")}</summary>
          <ul>
            {checks.map((c) => (
              <li key={c.address}>
                <VerdictWord verdict={c.verdict} size={12} />{" "}
                <a href={workingLink(c.address)}>
                  {c.asks} {c.thing}
                </a>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
