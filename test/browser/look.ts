// What must hold of the look of every page: nothing too small to read, no text over another, no sideways scroll.
import type { Page } from "playwright-core";

/** The smallest text that may stand on a screen [px]. */
const smallest = 12;

/** One sentence for each fault of the page as it stands, at its present size and theme. */
export function lookChecks(page: Page): Promise<string[]> {
  return page.evaluate(faultsOfLook, smallest);
}

/** Runs in the page, so it may use nothing from outside itself. */
function faultsOfLook(smallestText: number): string[] {
  interface Box {
    readonly node: Node;
    readonly element: Element;
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  }
  /** Letters fill about the middle three fifths of a line's box; above and below there is air that may be shared. */
  const air = 0.2;
  /** Rounding and the lean of italics let neighbours touch [px]. */
  const touch = 1;

  const quoted = (node: Node): string => `"${(node.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 40)}"`;

  const fontSize = (element: Element): number => {
    const drawn = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null;
    const scale = drawn === null ? 1 : Math.sqrt(Math.abs(drawn.a * drawn.d - drawn.b * drawn.c));
    return parseFloat(getComputedStyle(element).fontSize) * scale;
  };

  /** Indices are small by nature: the text they hang on is what must be readable. */
  const carrier = (element: Element): Element => element.closest("math") ?? element.closest("sub, sup")?.parentElement ?? element;

  /** The part of a box that scrolling or clipping ancestors leave to be seen. */
  const seen = (element: Element, box: DOMRect): Omit<Box, "node" | "element"> | null => {
    let { left, right, top, bottom } = box;
    for (let around: Element | null = element; around !== null; around = around.parentElement) {
      const { overflowX, overflowY } = getComputedStyle(around);
      if ((overflowX === "visible" && overflowY === "visible") || around === document.documentElement || around === document.body) continue;
      const frame = around.getBoundingClientRect();
      [left, right] = [Math.max(left, frame.left), Math.min(right, frame.right)];
      [top, bottom] = [Math.max(top, frame.top), Math.min(bottom, frame.bottom)];
    }
    return right - left > touch && bottom - top > touch ? { left, right, top, bottom } : null;
  };

  const letters = ({ left, right, top, bottom }: Omit<Box, "node" | "element">): Omit<Box, "node" | "element"> => {
    const [wide, high] = [right - left, bottom - top];
    const isUpright = high > 2 * wide; // a turned axis title has its air left and right
    return isUpright
      ? { left: left + air * wide, right: right - air * wide, top, bottom }
      : { left, right, top: top + air * high, bottom: bottom - air * high };
  };

  const boxes: Box[] = [];
  const small = new Set<string>();
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
    const element = node.parentElement;
    if (element === null || (node.textContent ?? "").trim() === "") continue;
    if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const visible = [...range.getClientRects()].flatMap((rect) => seen(element, rect) ?? []);
    for (const box of visible) boxes.push({ node, element, ...letters(box) });
    const size = fontSize(carrier(element));
    if (visible.length > 0 && size < smallestText - 0.05) small.add(`${quoted(node)} is ${size.toFixed(1)} px`);
  }
  for (const field of document.querySelectorAll("input, select, textarea")) {
    const size = fontSize(field);
    const isSeen = field.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    if (isSeen && size < smallestText - 0.05)
      small.add(`the ${field.localName} "${field.getAttribute("name") ?? field.id}" is ${size.toFixed(1)} px`);
  }

  /** Text under an opaque part that floats above it is not seen there: it scrolls out again. */
  const isCovered = (element: Element, x: number, y: number): boolean => {
    for (const above of document.elementsFromPoint(x, y)) {
      if (above === element || above.contains(element)) return false;
      const { backgroundColor, opacity } = getComputedStyle(above);
      if (opacity === "1" && !/transparent|, 0(\.\d+)?\)|\/ 0(\.\d+)?\)/.test(backgroundColor)) return true;
    }
    return false;
  };

  const overlaps = new Set<string>();
  boxes.sort((a, b) => a.top - b.top);
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      if (b.top >= a.bottom - touch) break;
      const [left, right] = [Math.max(a.left, b.left), Math.min(a.right, b.right)];
      const [top, bottom] = [Math.max(a.top, b.top), Math.min(a.bottom, b.bottom)];
      if (a.node === b.node || right - left <= touch || bottom - top <= touch) continue;
      const formula = a.element.closest("math");
      if (formula !== null && formula === b.element.closest("math")) continue;
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      if (isCovered(a.element, x, y) || isCovered(b.element, x, y)) continue;
      overlaps.add(`${quoted(a.node)} and ${quoted(b.node)} overlap at ${x.toFixed()}, ${y.toFixed()}`);
    }
  });

  const { scrollWidth, clientWidth } = document.documentElement;
  const sideways = scrollWidth > clientWidth ? [`the page is ${scrollWidth} px wide in a window of ${clientWidth} px`] : [];
  return [...small, ...overlaps, ...sideways];
}
