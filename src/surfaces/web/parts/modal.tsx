// A dialog over the page: the browser keeps the focus inside, Escape closes it, and the focus goes back to where it came from.
import type { ComponentChildren, JSX } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { Icon } from "./icon.tsx";
import "../styles/entry.css";

interface ModalProps {
  readonly title: string;
  readonly close: () => void;
  readonly children: ComponentChildren;
}

export function Modal({ title, close, children }: ModalProps): JSX.Element {
  const id = useId();
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const from = document.activeElement;
    box.current?.showModal();
    return () => {
      if (from instanceof HTMLElement && from.isConnected) from.focus();
    };
  }, []);
  return (
    <dialog ref={box} class="modal" aria-labelledby={id} onClose={close}>
      <header>
        <h2 id={id}>{title}</h2>
        <button type="button" class="x" aria-label="Close" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      {children}
    </dialog>
  );
}
