// A field that finds one of many: letters narrow the list, arrows walk it, Enter takes (WAI-ARIA Authoring Practices, combobox with list).
import type { JSX } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import "../styles/entry.css";

interface Choice {
  readonly id: string;
  readonly says: string;
  readonly detail: string;
}

interface ComboboxProps {
  readonly label: string;
  readonly placeholder: string;
  readonly find: (query: string) => readonly Choice[];
  readonly choose: (id: string) => void;
}

export function Combobox({ label, placeholder, find, choose }: ComboboxProps): JSX.Element {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [query, setQuery] = useState("");
  const [isOpen, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const choices = isOpen ? find(query) : [];
  const take = (choice: Choice | undefined): void => {
    if (!choice) return;
    setQuery("");
    setOpen(false);
    choose(choice.id);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const move = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (move !== 0) {
      event.preventDefault();
      if (!isOpen) setOpen(true);
      else setAt((at + move + choices.length) % Math.max(1, choices.length));
      document.getElementById(`${id}-${at + move}`)?.scrollIntoView({ block: "nearest" });
    } else if (event.key === "Enter" && isOpen) {
      event.preventDefault();
      take(choices[at]);
    } else if (event.key === "Escape" && (isOpen || query !== "")) {
      event.preventDefault();
      setOpen(false);
      setQuery("");
    }
  };
  return (
    <div class="combobox">
      <label class="sr" for={id}>
        {label}
      </label>
      <input
        id={id}
        ref={field}
        class="entry"
        type="text"
        role="combobox"
        autocomplete="off"
        spellcheck={false}
        placeholder={placeholder}
        aria-autocomplete="list"
        aria-expanded={choices.length > 0}
        aria-controls={`${id}-list`}
        aria-activedescendant={choices.length > 0 ? `${id}-${at}` : undefined}
        value={query}
        onInput={(event) => {
          setQuery(event.currentTarget.value);
          setAt(0);
          setOpen(true);
        }}
        onClick={() => setOpen(true)}
        onBlur={() => setOpen(false)}
        onKeyDown={onKeyDown}
      />
      <ul id={`${id}-list`} role="listbox" aria-label={label} hidden={choices.length === 0}>
        {choices.map((c, i) => (
          // A press would take the focus from the field and close the list before the click.
          <li
            key={c.id}
            id={`${id}-${i}`}
            role="option"
            aria-selected={i === at}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => take(c)}
          >
            <span>{c.says}</span>
            <span class="q small">{c.detail}</span>
          </li>
        ))}
      </ul>
      {isOpen && query !== "" && choices.length === 0 ? <p class="none small q2">Nothing is called that.</p> : null}
    </div>
  );
}
