// Whether the edits are being shown to be kept: asked for by a button in rooms, by Ctrl-S in the file view, by the compare page.
import { signal } from "@preact/signals";

export const isKeepOpen = signal(false);

export function askToKeep(): void {
  isKeepOpen.value = true;
}
