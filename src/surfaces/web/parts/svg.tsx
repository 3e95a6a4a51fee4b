// Drawings that come as text. They are made by src/pictures, which escapes every word, and hold no inline style.
import type { HTMLAttributes, JSX } from "preact";

export function Svg({ text, ...rest }: { text: string } & HTMLAttributes<HTMLSpanElement>): JSX.Element {
  return <span {...rest} dangerouslySetInnerHTML={{ __html: text }} />;
}
