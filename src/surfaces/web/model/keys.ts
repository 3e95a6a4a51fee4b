// Keys that work everywhere: find, undo, redo.
import { trail } from "./desk.ts";
import { redone, undone } from "./edits.ts";
import { isFindOpen } from "./find-open.ts";

export function startKeys(): void {
  document.addEventListener("keydown", (event) => {
    const target = event.target instanceof Element ? event.target : null;
    // The editor of the file view has a history of its own.
    if (event.defaultPrevented || target?.closest("[data-own-history]")) return;
    const isTyping = target?.closest("input, textarea, select, [contenteditable]") !== null;
    const command = event.ctrlKey || event.metaKey;
    const key = event.key.toLowerCase();
    if (key === "/" && !isTyping && !command && !event.altKey) {
      event.preventDefault();
      isFindOpen.value = true;
    } else if (command && (key === "z" || key === "y") && !event.altKey) {
      event.preventDefault();
      trail.value = key === "y" || event.shiftKey ? redone(trail.value) : undone(trail.value);
    }
  });
}
