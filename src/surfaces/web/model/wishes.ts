// How this user wants the page in this browser: units and theme. Nothing of the shop depends on it.
import { effect, signal } from "@preact/signals";
import type { Units } from "../worker/view.ts";

type Theme = "system" | "light" | "dark";

const read = (key: string): string | null => localStorage.getItem(`waywright.${key}`);
const write = (key: string, value: string | null): void =>
  value === null ? localStorage.removeItem(`waywright.${key}`) : localStorage.setItem(`waywright.${key}`, value);

const unitsRead = read("units");
const themeRead = read("theme");

export const wished = {
  units: signal<Units>(unitsRead === "metric" || unitsRead === "inch" ? unitsRead : null),
  theme: signal<Theme>(themeRead === "light" || themeRead === "dark" ? themeRead : "system"),
};

/** Keeps the wishes, and dresses the page. */
export function startWishes(): void {
  effect(() => write("units", wished.units.value));
  effect(() => {
    const theme = wished.theme.value;
    write("theme", theme === "system" ? null : theme);
    if (theme === "system") delete document.documentElement.dataset["theme"];
    else document.documentElement.dataset["theme"] = theme;
  });
}
