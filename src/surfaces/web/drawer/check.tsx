// The working of a check: its margin, the two numbers it is made of, what decides it, and what would cure it.
import type { JSX } from "preact";
import type { CheckAnswer } from "../../../kernel/answer.ts";
import { prettyUnit } from "../../../kernel/display.ts";
import { BandPicture, type Need } from "../parts/band.tsx";
import { bandWords } from "../parts/amount-words.ts";
import { WorkingLink } from "../parts/amount.tsx";
import { Remedies } from "../parts/remedies.tsx";
import { Shares } from "../parts/shares.tsx";
import { VerdictToCome, VerdictWord } from "../parts/verdict.tsx";
import { useAsk } from "../model/asking.ts";
import { banded, isStale } from "../model/desk.ts";
import { bandWord, marginWord } from "../model/numbers.ts";
import { workingLink } from "../model/place.ts";
import { DrawerHead } from "./head.tsx";
import { MeasureBox } from "./measure-box.tsx";

export function CheckWorking({ check }: { check: CheckAnswer }): JSX.Element {
  const isNew = banded.value === null;
  const stale = isStale.value;
  const { thing } = check;
  const [top] = check.deciders;
  return (
    <>
      <DrawerHead address={check.address} title={`${check.asks}${thing === "" ? "" : ` ${thing}`}`}>
        <p class="big">
          <span class="q">margin</span>
          <b class={typeof check.margin.nominal === "number" && !check.yesNo ? "" : "word"}>{marginWord(check)}</b>
          <span class={stale ? "q" : "q2"}>{isNew ? "…" : bandWord(check)}</span>
          {isNew ? <VerdictToCome /> : <VerdictWord verdict={check.verdict} />}
        </p>
      </DrawerHead>
      <Notes check={check} />
      <table class="it sides">
        <caption class="sr">Demand and capacity</caption>
        <tbody>
          <Side says="demand" side={check.demand} />
          <Side says="capacity" side={check.capacity} />
          {check.yesNo ? null : (
            <tr>
              <th scope="row">reserve</th>
              <td class="val">
                <b>{check.reserve}</b>
                <span class="says q small">
                  holds from here on, {check.people ? "judged at the worst corner: it guards a person" : "at the low end of the band"}
                </span>
              </td>
              <td />
            </tr>
          )}
        </tbody>
      </table>
      <CapacityBand check={check} />
      {check.deciders.length === 0 ? null : (
        <>
          <h3>What decides it</h3>
          <Shares
            shares={check.deciders
              .slice(0, 6)
              .map((d) => ({ address: d.input.includes("/") ? d.input : null, says: d.says, share: d.share }))}
          />
        </>
      )}
      {top ? <MeasureBox wanted={{ input: top.input, says: top.says, measure: top.measure }} /> : null}
      {check.verdict === "holds" ? null : (
        <>
          <h3>What would change it</h3>
          <Remedies check={check} />
        </>
      )}
      {check.restsOn.length === 0 ? null : (
        <div class="srcs small q">
          {check.restsOn.map((r) => (
            <p key={r.says}>
              Rests on {r.says}{" "}
              {r.guard === null ? ", which nothing guards." : <a href={workingLink(r.guard)}>which this check does not bear out</a>}
            </p>
          ))}
        </div>
      )}
    </>
  );
}

function Notes({ check }: { check: CheckAnswer }): JSX.Element | null {
  const notes = [
    ...(check.because === null ? [] : [`${check.because.charAt(0).toUpperCase()}${check.because.slice(1)}.`]),
    ...(check.near ? ["A limit of the band lies within 2 % of another verdict."] : []),
    ...(check.estimated ? ["Estimated; the simulation is still running."] : []),
  ];
  return notes.length === 0 ? null : (
    <div class="method">
      {notes.map((n) => (
        <p key={n}>{n}</p>
      ))}
    </div>
  );
}

function Side({ says, side }: { says: string; side: CheckAnswer["demand"] }): JSX.Element {
  return (
    <tr>
      <th scope="row">{says}</th>
      <td class="val">
        {side === null ? <span class="q">not there yet</span> : <WorkingLink address={side.address} text={side.amount.text} />}
        {side === null ? null : <span class="says q small">{side.says}</span>}
      </td>
      <td class="q2">{side === null ? "" : bandWords(side.amount)}</td>
    </tr>
  );
}

/** The capacity's band against the demand; the margin says the rest. */
function CapacityBand({ check }: { check: CheckAnswer }): JSX.Element | null {
  const { capacity, demand, yesNo } = check;
  const { reply } = useAsk("working", capacity === null || yesNo ? null : { address: capacity.address });
  const plot = reply?.plot ?? null;
  if (plot === null || capacity === null || demand === null || reply?.mode === "nominal" || plot.low === plot.high) return null;
  const [c, d] = [capacity.amount.nominal, demand.amount.nominal];
  if (typeof c !== "number" || typeof d !== "number" || c === 0) return null;
  const need: Need = { at: (d * plot.nominal) / c, words: `asked ${prettyUnit(demand.amount.text)}`, side: "above" };
  return (
    <>
      <h3>Capacity, 5 to 95 %</h3>
      <BandPicture numbers={plot} need={need} says={capacity.says} />
    </>
  );
}
