// The head of a drawer: the address, how to close it, what it is about.
import type { ComponentChildren, JSX } from "preact";
import { Icon } from "../parts/icon.tsx";
import { openWorking } from "../model/place.ts";

export function DrawerHead({ address, title, children }: { address: string; title: string; children?: ComponentChildren }): JSX.Element {
  return (
    <header>
      <div class="dh">
        <span class="crumb q small">working · {address}</span>
        <button type="button" class="x" aria-label="Close the working" onClick={() => openWorking(null)}>
          <Icon name="close" />
        </button>
      </div>
      <h2 tabIndex={-1} class="ft">
        {title}
      </h2>
      {children}
    </header>
  );
}
