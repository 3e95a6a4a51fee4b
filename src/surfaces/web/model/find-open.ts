// Whether the finder is open: asked for by a key, a button and the phone's bar alike.
import { signal } from "@preact/signals";

export const isFindOpen = signal(false);

export function openFind(): void {
  isFindOpen.value = true;
}
