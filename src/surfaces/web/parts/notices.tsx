// Mistakes people make, found in the numbers: each said at once, with the value it belongs to.
import type { JSX } from "preact";
import type { NoticeAnswer } from "../../../kernel/answer.ts";
import { workingLink } from "../model/place.ts";
import { Icon } from "./icon.tsx";

const order = ["error", "warning", "note"];

export function Notices({ notices }: { notices: readonly NoticeAnswer[] }): JSX.Element | null {
  if (notices.length === 0) return null;
  return (
    <ul class="notices">
      {notices
        .toSorted((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
        .map((n) => (
          <li key={`${n.address} ${n.says}`} class={n.severity}>
            <Icon name={n.severity === "note" ? "documents" : "caution"} size={14} />
            <span>
              {n.says}{" "}
              <a href={workingLink(n.at)} class="small">
                {n.severity === "note" ? "see" : "look at it"}
              </a>
            </span>
          </li>
        ))}
    </ul>
  );
}
