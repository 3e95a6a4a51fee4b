// A picture as a file of its own: its colours written out, so that it looks the same in a mail, on paper, in another program.

import { writtenBoxes } from "./words.ts";

const svgRoot = /^<svg ([^>]*)>/;

/**
 * The drawing with the rules of the given style sheets inside, every variable replaced by its light value, on its own ground.
 * `sheets` are the texts of tokens.css and pictures.css.
 */
export function standalone(svg: string, sheets: readonly string[]): string {
  const text = sheets.join("\n").replaceAll(/\/\*[\s\S]*?\*\//g, "");
  const values = variables(text);
  const style = rules(text)
    .map((rule) => resolved(rule, values))
    .join("\n");
  const ground = `<rect class="fp" width="100%" height="100%"/>`;
  // Where the face is not installed another one stands in: each line is made to fill the room it was laid out for.
  const widths = writtenBoxes(svg).map((box) => box.width.toFixed(1));
  const held = svg.replaceAll("<text ", () => `<text textLength="${widths.shift() ?? ""}" lengthAdjust="spacingAndGlyphs" `);
  return held.replace(svgRoot, (root) => `${root}\n<style>\n${style}\n</style>\n${ground}`);
}

/** The custom properties of the first `:root` block: a picture on its own is light, as paper is. */
function variables(text: string): Map<string, string> {
  const block = /:root\s*{([^}]*)}/.exec(text)?.[1] ?? "";
  return new Map([...block.matchAll(/(--[\w-]+):\s*([^;]+);/g)].map((match) => [match[1] ?? "", light(match[2] ?? "")]));
}

function light(value: string): string {
  return value.replaceAll(/light-dark\(\s*([^,()]+),\s*[^()]+\)/g, "$1");
}

/** Rules whose selectors are classes alone: those a drawing uses; states and pages are left out. */
function rules(text: string): string[] {
  return [...text.matchAll(/([^{}]+){([^{}]*)}/g)]
    .filter((match) => /^\s*\.[\w-]+(\.[\w-]+)*(\s*,\s*\.[\w-]+(\.[\w-]+)*)*\s*$/.test(match[1] ?? ""))
    .map((match) => match[0].trim().replaceAll(/\s+/g, " "));
}

function resolved(rule: string, values: ReadonlyMap<string, string>): string {
  const once = rule.replaceAll(
    /var\(\s*(--[\w-]+)\s*(?:,\s*((?:[^()]|\([^()]*\))+))?\)/g,
    (_, name: string, other?: string) => values.get(name) ?? other ?? "",
  );
  return once.includes("var(") && once !== rule ? resolved(once, values) : once;
}
