// One of a few: buttons that share a frame, one of them down.
import type { JSX } from "preact";

interface SegProps<T> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly says: string; readonly title?: string }[];
  readonly choose: (value: T) => void;
}

export function Seg<T extends string>({ label, value, choices, choose }: SegProps<T>): JSX.Element {
  return (
    <div class="seg" role="group" aria-label={label}>
      {choices.map((c) => (
        <button key={c.value} type="button" aria-pressed={c.value === value} title={c.title} onClick={() => choose(c.value)}>
          {c.says}
        </button>
      ))}
    </div>
  );
}
