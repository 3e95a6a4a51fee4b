// Where a value is from: a mark and a word for each.
import type { JSX } from "preact";
import type { OriginAnswer } from "../../../kernel/answer.ts";
import type { IconName } from "../../../pictures/icons.ts";
import { sourceWords } from "./source-words.ts";
import { Icon } from "./icon.tsx";

export function Source({ origin, written }: { origin: OriginAnswer; written: string | null }): JSX.Element {
  const { icon, word } = sourceWords(origin, written);
  return (
    <span class={`src${icon === "dont-know" ? " dk" : ""}`} title={origin.says}>
      <Icon name={icon satisfies IconName} size={13} />
      {word}
    </span>
  );
}
