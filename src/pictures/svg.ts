// SVG as text: elements, escaped words, short numbers. Colours are classes only, so one drawing serves both themes and paper.

export type Attributes = Readonly<Record<string, string | number | undefined>>;

export interface Point {
  readonly x: number;
  readonly y: number;
}

export function escaped(words: string): string {
  return words.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

/** A tenth of a pixel is finer than any screen shows and keeps the text short. */
export function short(value: number): string {
  return String(Math.round(value * 10) / 10 + 0);
}

/** One element; an attribute that is undefined is left out. */
export function el(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let open = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) open += ` ${key}="${typeof value === "number" ? short(value) : escaped(value)}"`;
  }
  return children.length === 0 ? `${open}/>` : `${open}>${children.join("")}</${name}>`;
}

/** Elements one below the other, so that a changed golden shows as changed lines. */
export function lines(...parts: readonly (string | readonly string[])[]): string {
  return parts
    .flat()
    .filter((part) => part !== "")
    .join("\n");
}

export interface Frame {
  /** States the finding: what a person who cannot see the drawing must know. */
  readonly label: string;
  readonly width: number;
  readonly height: number;
  /** A drawing with links in it is a group; any other is an image. */
  readonly role?: "group";
}

/** A whole drawing at its own size: laid out for its width, never scaled. */
export function drawing(frame: Frame, ...parts: readonly string[]): string {
  const size = { width: frame.width, height: frame.height, viewBox: `0 0 ${short(frame.width)} ${short(frame.height)}` };
  const root = { xmlns: "http://www.w3.org/2000/svg", class: "picture", ...size, role: frame.role ?? "img", "aria-label": frame.label };
  return `${el("svg", root, `\n${lines(...parts)}\n`)}\n`;
}

/** `M x y L x y ...` through points in pixels. */
export function through(points: readonly Point[], closed = false): string {
  const steps = points.map((point, i) => `${i === 0 ? "M" : "L"}${short(point.x)} ${short(point.y)}`);
  return steps.join("") + (closed ? "Z" : "");
}

export function line(from: Point, to: Point, attributes: Attributes): string {
  return el("line", { x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...attributes });
}

/** 45 degree hatch: what is not known, or what is forbidden. Use as `fill="url(#id)"`. */
export function hatch(id: string, strokeClass: string, pitch = 6, width = 1): string {
  const stripe = el("path", { d: `M0 0V${pitch}`, class: strokeClass, "stroke-width": width });
  return el("pattern", { id, width: pitch, height: pitch, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" }, stripe);
}
