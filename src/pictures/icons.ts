// The icons of the pages: strokes on a 20 by 20 square, one sprite for all. Always beside a word, never alone in its place.
import { el } from "./svg.ts";

const side = 20;

/** Paths by name. A dot is a stroke of no length with round ends. */
const paths = {
  // Where a value is from.
  plate: "M2.5 4.5H17.5V15.5H2.5ZM5.5 8H11M5.5 11.5H14.5M4.5 6.5h0M15.5 6.5h0",
  measured: "M2.5 9.5V5.5H17.5V9.5M2.5 5.5V16M6 9.5H2.5M6 9.5V12.5M10 5.5V9.5M13.8 5.5V8M6.2 5.5V8",
  typical: "M2.5 7.5C5 4.5 7.5 4.5 10 7.5S15 10.5 17.5 7.5M2.5 13C5 10 7.5 10 10 13S15 16 17.5 13",
  typed: "M4 16L4.8 12.8 14 3.6 16.4 6 7.2 15.2ZM12.2 5.4L14.6 7.8",
  option: "M3 10H8L12 5H17M8 10L12 15H17",
  "dont-know":
    "M7.4 7.7a2.7 2.7 0 1 1 3.9 2.5c-.9.5-1.3 1-1.3 1.9M10 14.4v.2M17.5 10a7.5 7.5 0 0 0-1.2-4M13.6 3.4a7.5 7.5 0 0 0-4.2-.9M5.6 4a7.5 7.5 0 0 0-2.6 3.4M2.6 11.2a7.5 7.5 0 0 0 1.9 3.9M8 17.2a7.5 7.5 0 0 0 4.3 0M15.4 15.2a7.5 7.5 0 0 0 1.8-3",
  catalogue: "M10 5C7.5 3.5 5 3.5 2.5 4.5V15.5C5 14.5 7.5 14.5 10 16 12.5 14.5 15 14.5 17.5 15.5V4.5C15 3.5 12.5 3.5 10 5ZM10 5V16",
  seen: "M2 10C5.5 4.5 14.5 4.5 18 10 14.5 15.5 5.5 15.5 2 10ZM12.4 10a2.4 2.4 0 1 1-4.8 0 2.4 2.4 0 0 1 4.8 0",
  "local-code": "M10 3V17M6 17H14M3.5 6H16.5M3.5 6L1.8 11.5H5.2ZM16.5 6L14.8 11.5H18.2Z",
  drawing: "M3 16.5H17M3 16.5V3.5L15.5 16.5M6.5 16.5V14.5M10 16.5V14.5M5.8 11.5V13.7H8",
  // Places.
  margins: "M11 2.5V17.5M3 5H16M3 10H13M7 15H17",
  rooms: "M3 3H8.5V8.5H3ZM11.5 3H17V8.5H11.5ZM3 11.5H8.5V17H3ZM11.5 11.5H17V17H11.5Z",
  "next-step": "M4.5 17.5V3M4.5 3.5H15.5L12.5 7 15.5 10.5H4.5",
  find: "M13.5 8.5a5 5 0 1 1-10 0 5 5 0 0 1 10 0M12.2 12.2L17 17",
  sequences: "M6.5 2.5H13.5V7H6.5ZM10 7V13M7 10H13M6.5 13H13.5V17.5H6.5Z",
  documents: "M5 2.5H12L15.5 6V17.5H5ZM12 2.5V6H15.5M7.5 10H13M7.5 13.5H13",
  // Doing.
  caution: "M10 2.8L18.2 17.2H1.8ZM10 8V12.4M10 14.8v.2",
  close: "M4.5 4.5L15.5 15.5M15.5 4.5L4.5 15.5",
  copy: "M7 7H16.5V17.5H7ZM13 4.5V2.5H3.5V13H4.8",
  export: "M10 12.5V2.5M6.5 6L10 2.5 13.5 6M3.5 11V17H16.5V11",
  undo: "M4 8.5H12.5a4 4 0 0 1 0 8H8M7.5 4.5L3.5 8.5 7.5 12.5",
  redo: "M16 8.5H7.5a4 4 0 0 0 0 8H12M12.5 4.5L16.5 8.5 12.5 12.5",
  theme: "M16.5 12.2A7 7 0 0 1 7.8 3.5 7 7 0 1 0 16.5 12.2Z",
  play: "M5.5 3.5L16 10 5.5 16.5Z",
  stop: "M4.5 4.5H15.5V15.5H4.5Z",
  print: "M5.5 7V2.5H14.5V7M5.5 14H3V7H17V14H14.5M5.5 11.5H14.5V17.5H5.5Z",
  photo: "M2.5 6H6.5L8 3.5H12L13.5 6H17.5V16H2.5ZM13 10.8a3 3 0 1 1-6 0 3 3 0 0 1 6 0",
  phone: "M6 2.5H14V17.5H6ZM9 15H11",
  remedy: "M5 3.5V11.5H15.5M12 8L15.5 11.5 12 15",
  conflict: "M3 5.5H8L12 14.5H17M3 14.5H8L9.2 11.8M10.8 8.2L12 5.5H17",
} as const;

export type IconName = keyof typeof paths;

/** Every icon as a symbol; stands once on a page, before anything that uses it. */
export function iconSprite(): string {
  const symbols = Object.entries(paths).map(([name, d]) =>
    el("symbol", { id: idOf(name), viewBox: `0 0 ${side} ${side}` }, el("path", { d })),
  );
  return el("svg", { xmlns: "http://www.w3.org/2000/svg", width: 0, height: 0, "aria-hidden": "true", focusable: "false" }, ...symbols);
}

/** One icon; with `label` it speaks for itself, without one it is decoration beside a word. */
export function icon(name: IconName, size = side, label?: string): string {
  const voice = label === undefined ? { "aria-hidden": "true" } : { role: "img", "aria-label": label };
  return el("svg", { class: "icon", width: size, height: size, ...voice }, el("use", { href: `#${idOf(name)}` }));
}

export const iconNames: readonly IconName[] = Object.keys(paths).filter((name): name is IconName => name in paths);

function idOf(name: string): string {
  return `icon-${name}`;
}
