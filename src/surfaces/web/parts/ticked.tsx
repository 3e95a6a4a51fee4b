// Words of the loader: what stands between backticks is a piece of a file.
import type { JSX } from "preact";

export function Ticked({ text }: { text: string }): JSX.Element {
  return <>{text.split("`").map((part, i) => (i % 2 === 1 ? <code key={i}>{part}</code> : part))}</>;
}
