// A number with its unit and its band in words; a link to its working, and copied with its unit.
import type { JSX } from "preact";
import { workingLink } from "../model/place.ts";
import { numberAndUnit } from "./amount-words.ts";

function Value({ text }: { text: string }): JSX.Element {
  const { number, unit } = numberAndUnit(text);
  return (
    <>
      <span class="b">{number}</span>
      {unit === "" ? null : <span class="q">{` ${unit}`}</span>}
    </>
  );
}

export function WorkingLink({ address, text }: { address: string; text: string }): JSX.Element {
  return (
    <a class="number" href={workingLink(address)} data-opens="working">
      <Value text={text} />
    </a>
  );
}
