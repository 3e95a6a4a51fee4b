// The working drawer: any number and any check, opened over the page one is on. Escape closes it, and the focus goes back to where it came from.
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { banded, newest } from "../model/desk.ts";
import { openWorking } from "../model/place.ts";
import { CheckWorking } from "./check.tsx";
import { NumberWorking } from "./number.tsx";
import "../styles/drawer.css";

export function Drawer({ address }: { address: string }): JSX.Element {
  const box = useRef<HTMLElement>(null);
  const from = useRef<Element | null>(null);
  useEffect(() => {
    from.current = document.activeElement;
    const close = (event: KeyboardEvent): void => {
      if (event.key !== "Escape" || event.defaultPrevented || document.querySelector("dialog[open], :popover-open") !== null) return;
      event.preventDefault();
      openWorking(null);
    };
    document.addEventListener("keydown", close);
    return () => {
      document.removeEventListener("keydown", close);
      const back = from.current;
      if (back instanceof HTMLElement && back.isConnected) back.focus();
    };
  }, []);
  useEffect(() => {
    box.current?.querySelector<HTMLElement>("h2")?.focus({ preventScroll: true });
    if (box.current) box.current.scrollTop = 0;
  }, [address]);
  const check = (banded.value ?? newest.value)?.answer.checks.find((c) => c.address === address);
  return (
    <aside class="drawer" aria-label="Working" ref={box}>
      {check ? <CheckWorking key={address} check={check} /> : <NumberWorking key={address} address={address} />}
    </aside>
  );
}
