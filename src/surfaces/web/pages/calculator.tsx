// Calculator: any figure of any room from values typed here, with its working and a plot along one of them. No shop is read.
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import type { System } from "../../../kernel/display.ts";
import { Along } from "../calculator/along.tsx";
import { FormFields } from "../calculator/form.tsx";
import { useLatest } from "../calculator/latest.ts";
import { FigureList } from "../calculator/list.tsx";
import { Result } from "../calculator/result.tsx";
import { clearTyped, followAddress, typed } from "../calculator/typed.ts";
import { dropOwn } from "../model/soon.ts";
import { answer } from "../model/desk.ts";
import { capital } from "../model/names.ts";
import { route } from "../model/place.ts";
import { wished } from "../model/wishes.ts";
import { Page } from "../shell/page.tsx";
import type { FigureHead } from "../worker/working-out.ts";
import "../styles/room.css";
import "../styles/entry.css";
import "../styles/calculator.css";

export function CalculatorPage(): JSX.Element {
  useEffect(followAddress, [route.value]);
  useEffect(() => dropOwn, []);
  const list = useLatest("figureList", {});
  const { figure } = typed.value;
  const head = (list.reply ?? []).find((f) => f.id === figure) ?? null;
  return (
    <Page
      crumb="No shop is read"
      title="Calculator"
      class={figure === null ? "calculator all" : "calculator"}
      sentence={
        figure === null ? "Any figure of any room, from values typed here: find one by its words, its id or its symbol." : undefined
      }
    >
      {list.reply === null ? <p class="q">…</p> : <FigureList figures={list.reply} chosen={figure} />}
      {head !== null ? (
        <Figure key={head.id} head={head} />
      ) : figure !== null && list.reply !== null ? (
        <p>There is no figure {figure}. Find another.</p>
      ) : null}
    </Page>
  );
}

function Figure({ head }: { head: FigureHead }): JSX.Element {
  const { values } = typed.value;
  const system = systemNow();
  const form = useLatest("figureForm", { figure: head.id });
  const { reply, isStale, failed } = useLatest("workFigure", { figure: head.id, values: Object.fromEntries(values), system });
  const fields = form.reply?.fields ?? [];
  const names = new Set(fields.map((f) => f.name));
  const missing = reply !== null && "error" in reply ? (reply.error.missing ?? []) : [];
  // What lies deeper: what is still wanted, and what was given already, in the order in which they came up.
  const ids = [...new Set([...values.keys(), ...missing])].filter((name) => !names.has(name));
  const deeper = useLatest("formFields", ids.length === 0 ? null : { ids }).reply ?? [];
  const elsewhere = new Set([...ids, ...fields.map((f) => f.id)]);
  const error = reply !== null && !isStale && "error" in reply ? reply.error : null;
  return (
    <>
      <form class="values" aria-label="Values" onSubmit={(event) => event.preventDefault()}>
        <p class="crumb small q">{head.id}</p>
        <h2 class="ft">{capital(head.says)}</h2>
        <FormFields fields={fields} by="name" error={error} elsewhere={elsewhere} />
        {deeper.length === 0 ? null : (
          <>
            <h3>To work out what is left empty above</h3>
            <FormFields fields={deeper} by="id" error={error} elsewhere={elsewhere} />
          </>
        )}
        {values.size === 0 ? null : (
          <p class="acts">
            <button type="button" class="btn" onClick={clearTyped}>
              Empty all fields
            </button>
          </p>
        )}
      </form>
      <div class="one">
        {failed === null ? null : <p class="wrong">This cannot be worked out: {failed}</p>}
        {reply === null ? <p class="q">…</p> : <Result reply={reply} isStale={isStale} form={form.reply} fields={[...fields, ...deeper]} />}
        <Along head={head} fields={[...fields, ...deeper]} system={system} />
      </div>
    </>
  );
}

/** Units as on every page; without a shop, metric ones. */
function systemNow(): System {
  const show = answer.value?.show;
  const units = wished.units.value ?? show?.units ?? "metric";
  return { units, pressure: units === "inch" ? "psi" : (show?.pressure ?? "bar"), currency: show?.currency ?? "" };
}
