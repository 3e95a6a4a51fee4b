// The head of a column: its name, what it is, all of its margins in one small picture.
import type { JSX } from "preact";
import { marginRug } from "../../../pictures/margin-rug.ts";
import { Icon } from "../parts/icon.tsx";
import { Svg } from "../parts/svg.tsx";
import { type Column, columnLink } from "./column.ts";
import { isMine, type Names } from "./columns.ts";

const faceWidth = 98; // px

export function Head({ root, column, drop }: { root: string; column: Column; drop: (names: Names) => void }): JSX.Element {
  const { reply, isChosen, name, names, title, isTried } = column;
  return (
    <th scope="col" class={isChosen ? "chosen" : ""}>
      <a href={columnLink(root, column, null)} class="name" aria-current={isChosen ? "true" : undefined}>
        {name}
      </a>
      {names.length > 1 && !isTried ? (
        <button type="button" class="x" aria-label={`Take the column ${name} away`} onClick={() => drop(names)}>
          <Icon name="close" size={12} />
        </button>
      ) : null}
      <span class="title small q2">{title}</span>
      {reply?.mistakes.map((says) => (
        <span class="title small wrong" key={says}>
          {says}
        </span>
      ))}
    </th>
  );
}

/** All margins of a column in one small picture. */
export function Face({ root, column: { reply, isChosen } }: { root: string; column: Column }): JSX.Element {
  const marks = (reply?.checks ?? []).flatMap(({ address, now }) => {
    const nominal = now?.margin.nominal;
    return isMine(address, root) && now && !now.yesNo && typeof nominal === "number" ? [{ verdict: now.verdict, nominal }] : [];
  });
  return (
    <td class={`face${isChosen ? " chosen" : ""}`}>
      {reply === null ? <span class="small q">worked out …</span> : <Svg text={marginRug(marks, faceWidth)} />}
    </td>
  );
}
