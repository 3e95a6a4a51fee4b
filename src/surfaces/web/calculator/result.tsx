// The figure that follows: number and band, formula with the numbers put in, what was used and where it is from.
import type { JSX } from "preact";
import { prettyUnit } from "../../../kernel/display.ts";
import type { WorkError } from "../../../kernel/work.ts";
import { Formula } from "../drawer/number.tsx";
import { bandWords, numberAndUnit } from "../parts/amount-words.ts";
import { BandPicture } from "../parts/band.tsx";
import { capital } from "../model/names.ts";
import { Shares } from "../parts/shares.tsx";
import { Source } from "../parts/source.tsx";
import { Svg } from "../parts/svg.tsx";
import type { FigureForm, FormField, WorkReply } from "../worker/working-out.ts";

interface ResultProps {
  readonly reply: WorkReply;
  readonly isStale: boolean;
  readonly form: FigureForm | null;
  readonly fields: readonly FormField[];
}

export function Result({ reply, isStale, form, fields }: ResultProps): JSX.Element {
  if ("error" in reply) return <Refused error={reply.error} form={form} fields={fields} isStale={isStale} />;
  const { worked } = reply;
  const w = worked.working;
  const amount = w.amount;
  const { number, unit } = numberAndUnit(amount?.text ?? "");
  return (
    <div class={isStale ? "result-of stale" : "result-of"}>
      <p class="big" role="status">
        {worked.symbol === "" ? null : <Svg class="symbol" text={worked.symbol} />}
        <b>{number}</b>
        {unit === "" ? null : <span class="u">{unit}</span>}
        <span class="q2">{amount ? bandWords(amount) : ""}</span>
      </p>
      <Formula reply={worked} />
      <table class="it">
        <caption class="sr">What was used</caption>
        <thead class="sr">
          <tr>
            <th scope="col">symbol</th>
            <th scope="col">value</th>
            <th scope="col">band</th>
            <th scope="col">from</th>
          </tr>
        </thead>
        <tbody>
          {w.needs.map((n) => (
            <tr key={n.name}>
              <th scope="row">
                {worked.symbols[n.name] ? (
                  <>
                    <Svg text={worked.symbols[n.name] ?? ""} aria-hidden="true" />
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
              <td class="q2">{n.is === "missing" || n.band === "" ? "" : bandWords({ nominal: 0, text: n.text, band: n.band })}</td>
              <td>
                {n.is === "missing" ? (
                  <span class="q">left out</span>
                ) : n.origin ? (
                  <Source origin={n.origin} written={null} />
                ) : (
                  <span class="q">worked out</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {worked.plot !== null && worked.plot.low < worked.plot.high ? (
        <>
          <h3>Band, 5 to 95 %</h3>
          <BandPicture numbers={worked.plot} need={null} says={capital(w.says)} />
        </>
      ) : null}
      {w.shares.length === 0 ? null : (
        <>
          <h3>What decides it</h3>
          <Shares shares={w.shares.slice(0, 6).map(({ says, share }) => ({ address: null, says, share }))} />
        </>
      )}
      <p class="srcs small q">{w.source === "" ? "" : `Source: ${w.source}.`}</p>
    </div>
  );
}

interface RefusedProps extends Omit<ResultProps, "reply"> {
  readonly error: WorkError;
}

/** What is still wanted, by the words of its field, under the formula; a mistake stands at its field as well. */
function Refused({ error, form, fields, isStale }: RefusedProps): JSX.Element {
  const nameOf = (name: string): string => fields.find((f) => f.name === name || f.id === name)?.says ?? name;
  return (
    <div class={isStale ? "result-of stale" : "result-of"}>
      {form === null ? null : <Formula reply={form} />}
      <div class="still" role="status">
        {error.missing ? (
          <>
            <p>Still wanted:</p>
            <ul class="wants">
              {error.missing.map((name) => (
                <li key={name}>{nameOf(name)}</li>
              ))}
            </ul>
          </>
        ) : (
          <p class={error.name === undefined ? "" : "wrong"}>{capital(error.message)}</p>
        )}
      </div>
      <p class="srcs small q">{form === null || form.source === "" ? "" : `Source: ${form.source}.`}</p>
    </div>
  );
}
