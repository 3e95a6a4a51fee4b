// The shop: its machines, and what waits for the user today.
import type { JSX } from "preact";
import { MachineDrawing } from "../parts/drawing.tsx";
import { MeasureNext } from "../parts/measure.tsx";
import { Notices } from "../parts/notices.tsx";
import { Say } from "../parts/say.tsx";
import { Ticked } from "../parts/ticked.tsx";
import { VerdictWord } from "../parts/verdict.tsx";
import type { Finding } from "../../../kernel/finding.ts";
import type { Verdict } from "../../../kernel/verdict.ts";
import { marginWord } from "../model/numbers.ts";
import { answer, banded, diskFindings, household } from "../model/desk.ts";
import { machineName } from "../model/names.ts";
import { hazardsOf, nextOf } from "../model/next.ts";
import { linkTo, workingLink } from "../model/place.ts";
import { checksOf } from "../model/rooms.ts";
import { countsOf, shopSentence } from "../model/sentence.ts";
import { canBeDone } from "../model/steps.ts";
import { thingOf } from "../model/things.ts";
import { Page } from "../shell/page.tsx";
import "../styles/lists.css";
import "../styles/margins.css";

const verdicts: readonly Verdict[] = ["fails", "open", "tight", "holds"];

export function ShopPage(): JSX.Element {
  const said = banded.value?.answer ?? null;
  const machines = (answer.value?.machines ?? []).map((m) => ({ ...m, name: machineName(m.root) }));
  const findings = [...diskFindings.value, ...(answer.value?.findings ?? [])];
  const mistakes = findings.filter((f) => f.severity === "error").length;
  const counted = machines.map((m) => ({ ...m, counts: countsOf(said ? checksOf(said, m.root) : []) }));
  const failing = (said?.checks ?? []).filter((c) => c.verdict === "fails");
  return (
    <Page
      crumb={answer.value?.shop ?? ""}
      title="Shop"
      sentence={said ? <Say text={shopSentence(counted, mistakes)} /> : <span class="q">Working it out …</span>}
      class="shop-page"
    >
      <div class="machines">
        {counted.map((m) => (
          <section key={m.root} aria-label={m.name}>
            <h2>
              <a href={linkTo({ page: "margins", machine: m.root })}>{m.name}</a>{" "}
              <span class="q small">{[m.title === m.root ? "" : m.title, m.year].filter((w) => w !== "").join(", ")}</span>
            </h2>
            <ul class="tally">
              {verdicts.map((v) => (
                <li key={v}>
                  <a href={linkTo({ page: "margins", machine: m.root }, new Map([["verdict", v]]))}>
                    <VerdictWord verdict={v} /> {said ? m.counts[v] : "–"}
                  </a>
                </li>
              ))}
            </ul>
            <MachineDrawing root={m.root} />
          </section>
        ))}
        {answer.value && machines.length === 0 ? (
          <p class="empty">
            A machine is a folder with a machine.yaml in it. <a href={linkTo({ page: "files" })}>Write the first one</a>
          </p>
        ) : null}
      </div>
      <div class="waits">
        {failing.length === 0 ? null : (
          <section aria-labelledby="failing">
            <h2 id="failing">Failing checks</h2>
            <ul class="lines-list tight-lines">
              {failing.slice(0, 8).map((c) => (
                <li key={c.address}>
                  <a href={workingLink(c.address)}>
                    <VerdictWord verdict={c.verdict} />
                    <span>
                      {c.asks} <span class="q">{thingOf(c.item)}</span>
                    </span>
                    <b>{marginWord(c)}</b>
                  </a>
                </li>
              ))}
            </ul>
            {failing.length > 8 ? <p class="small q2">{failing.length - 8} more on the pages of the machines.</p> : null}
          </section>
        )}
        {answer.value ? (
          <MeasureNext list={nextOf((banded.value ?? { answer: answer.value }).answer, household.value, null)} most={5} />
        ) : null}
        <Doable />
        <InFiles findings={findings} />
        {answer.value ? <Notices notices={answer.value.notices.filter((n) => n.severity !== "note")} /> : null}
      </div>
    </Page>
  );
}

/** Steps that wait for no other. */
function Doable(): JSX.Element | null {
  const steps = canBeDone(household.value?.steps ?? []).slice(0, 6);
  const machine = answer.value?.machines[0]?.root;
  if (steps.length === 0 || machine === undefined) return null;
  return (
    <section class="next" aria-labelledby="doable">
      <h2 id="doable">Steps that can be done</h2>
      <ol>
        {steps.map((s, i) => (
          <li key={s.id}>
            <span class="q no">{i + 1}</span>
            <a href={linkTo({ page: "next", machine }, new Map([["step", s.id]]))}>{s.title}</a>
            <span class="num q2 small">
              {hazardsOf(household.value, s)
                .map((h) => h.name.toLowerCase())
                .join(", ")}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Mistakes first; notes only counted: they stand in the files. */
function InFiles({ findings }: { findings: readonly Finding[] }): JSX.Element | null {
  const mistakes = findings.filter((f) => f.severity === "error");
  const notes = findings.length - mistakes.length;
  if (findings.length === 0) return null;
  return (
    <section class="next" aria-labelledby="in-files">
      <h2 id="in-files">In the files</h2>
      <ol>
        {mistakes.slice(0, 6).map((f, i) => (
          <li key={`${f.place.file}:${f.place.line}:${f.place.column} ${f.code}`}>
            <span class="q no">{i + 1}</span>
            <a
              href={linkTo(
                { page: "files" },
                new Map([
                  ["file", f.place.file],
                  ["line", String(f.place.line)],
                ]),
              )}
            >
              {f.place.file}, line {f.place.line}
            </a>
            <span />
            <span class="why small q2">
              <Ticked text={f.says} />
            </span>
          </li>
        ))}
      </ol>
      {notes === 0 ? null : (
        <p class="small q2">
          {notes} {notes === 1 ? "note" : "notes"} <a href={linkTo({ page: "files" })}>in the files</a>
        </p>
      )}
    </section>
  );
}
