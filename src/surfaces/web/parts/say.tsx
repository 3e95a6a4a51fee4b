// A generated sentence: words between asterisks are the ones that decide.
import type { JSX } from "preact";

export function Say({ text }: { text: string }): JSX.Element {
  return <>{text.split("*").map((part, i) => (i % 2 === 1 ? <b key={i}>{part}</b> : part))}</>;
}
