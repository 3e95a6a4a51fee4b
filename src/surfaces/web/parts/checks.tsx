// Checks as rows on one scale: verdict, question, strip, margin, band. A row opens the working.
import type { ComponentChildren, JSX } from "preact";
import type { Row } from "../model/shown.ts";
import { bandWord, marginWord } from "../model/numbers.ts";
import { route, workingLink } from "../model/place.ts";
import { Strip, StripScale } from "./strip.tsx";
import { VerdictToCome, VerdictWord } from "./verdict.tsx";

interface ListProps {
  readonly rows: readonly Row[];
  /** How a check of no thing in particular is told apart where several rooms stand in one list. */
  readonly roomOf?: (room: string) => string;
  readonly head: ComponentChildren;
  /** What stands below a row. */
  readonly below?: (row: Row) => ComponentChildren;
}

export function CheckList({ rows, roomOf, head, below }: ListProps): JSX.Element {
  return (
    <div class="checks">
      <div class="ra mhead">
        {head}
        <span class="sc">
          <StripScale />
        </span>
        <span class="num">margin</span>
        <span class="bd">5 to 95 %</span>
      </div>
      <ol>
        {rows.map((row) => (
          <CheckRow key={row.check.address} row={row} roomOf={roomOf}>
            {below?.(row)}
          </CheckRow>
        ))}
      </ol>
    </div>
  );
}

function CheckRow({ row, roomOf, children }: { row: Row; roomOf: ListProps["roomOf"]; children: ComponentChildren }): JSX.Element {
  const { check, isStale, isNew } = row;
  const thing = check.thing || (roomOf?.(check.room) ?? "");
  const isOpen = route.value.working === check.address;
  return (
    <li class={`row${isOpen ? " sel" : ""}${isStale ? " stale" : ""}`}>
      <a class="ra" href={workingLink(check.address)} aria-current={isOpen ? "true" : undefined}>
        {isNew ? <VerdictToCome /> : <VerdictWord verdict={check.verdict} />}
        <span class="nm">
          {check.asks} {thing === "" ? null : <span class="thing">{thing}</span>}
        </span>
        <span class="sc">{isNew ? null : <Strip check={check} />}</span>
        <span class="mg">{marginWord(check)}</span>
        <span class="bd">{isNew ? "" : bandWord(check)}</span>
      </a>
      {children}
    </li>
  );
}
