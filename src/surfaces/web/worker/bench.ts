// The shop on the worker's bench: texts parsed once, and evaluations of what is looked at, each lending its columns to the next.
import { evaluate, type Evaluation, type Mode } from "../../../kernel/evaluate.ts";
import { build } from "../../../kernel/graph.ts";
import type { Model, Variant } from "../../../kernel/model/node.ts";
import { headsOf, homeOf, patch } from "../../../kernel/model/patch.ts";
import { parseShop, type ParsedShop, resolve } from "../../../kernel/model/resolve.ts";
import { waywright } from "../../../rooms/index.ts";
import { partsOf, type Refused, type Units, type ValueEdit, type View } from "./view.ts";

/** A shop with the edits that only a text can hold written into it, and the others to be laid over. */
interface Prepared {
  readonly shop: ParsedShop;
  readonly variant: Variant;
  /** The same shop with its edits, without options and values tried out. */
  readonly found: Variant;
  readonly refused: readonly Refused[];
}

export class Bench {
  readonly house = waywright;
  view: View = { pass: 0, values: [], options: [], tries: [], units: null };
  #texts = new Map<string, { readonly text: string }>();
  #disk: ParsedShop | null = null;
  #edited: ParsedShop | null = null;
  #prepared: Prepared | null = null;
  /** Evaluations of the present view, those of them that are whole, and the last of each mode to lend columns. */
  readonly #now = new Map<Mode, Evaluation>();
  readonly #whole = new Set<Mode>();
  readonly #last = new Map<Mode, Evaluation>();
  /** The machine as found, beside what is looked at. */
  #found: Evaluation | null = null;
  #isFoundNow = false;

  lay(texts: readonly (readonly [string, string | null])[]): void {
    for (const [path, text] of texts) {
      if (text === null) this.#texts.delete(path);
      else this.#texts.set(path, { text });
    }
    this.#disk = parseShop(this.#texts, this.house.keys, this.#disk ?? undefined);
    this.#forget();
  }

  look(view: View): void {
    this.view = view;
    this.#forget();
  }

  #forget(): void {
    this.#now.clear();
    this.#whole.clear();
    this.#isFoundNow = false;
    this.#prepared = null;
  }

  /** The files as they lie on the page's desk: kept texts and texts typed in the file view, without values typed into fields. */
  get shop(): ParsedShop {
    return (this.#disk ??= parseShop(this.#texts, this.house.keys));
  }

  /** What is looked at, ready to be evaluated. */
  prepared(): Prepared {
    return (this.#prepared ??= this.#prepare());
  }

  /** A value is laid over, which is fast; a list, or a key taken away, has to be written into the text first. */
  #prepare(): Prepared {
    const { values, options } = this.view;
    const typed = values.flatMap(({ address, value }) => (typeof value === "string" ? [{ ...partsOf(address), text: value }] : []));
    const inText = values.filter((v) => typeof v.value !== "string");
    const variant = { options, tries: [...typed, ...this.view.tries] };
    const found = { options: [], tries: typed };
    if (inText.length === 0) return { shop: this.shop, variant, found, refused: [] };
    const { texts, refused } = written(this.shop, inText);
    const all = new Map([...this.#texts, ...[...texts].map(([path, text]) => [path, { text }] as const)]);
    this.#edited = parseShop(all, this.house.keys, this.#edited ?? this.shop);
    return { shop: this.#edited, variant, found, refused };
  }

  /** What is looked at, evaluated in a mode. */
  evaluation(mode: Mode): Evaluation {
    const have = this.#now.get(mode);
    if (have) return have;
    const { variant } = this.prepared();
    const made = this.evaluated(variant, mode, this.#last.get(mode));
    this.#now.set(mode, made);
    return made;
  }

  /** Every column of it is worked out: it lends them to what comes next. */
  finished(mode: Mode): void {
    this.#whole.add(mode);
    const made = this.#now.get(mode);
    if (made) this.#last.set(mode, made);
  }

  /** The best evaluation of what is looked at that is whole; the nominal one where none is. */
  best(): Evaluation {
    const mode = (["full", "quick"] as const).find((m) => this.#whole.has(m)) ?? "nominal";
    return this.evaluation(mode);
  }

  /** The same shop without options, to stand beside what is looked at. */
  found(mode: Mode): Evaluation {
    if (this.#found === null || !this.#isFoundNow || this.#found.mode !== mode) {
      const lends = this.#found?.mode === mode ? this.#found : undefined;
      this.#found = this.evaluated(this.prepared().found, mode, lends);
      this.#isFoundNow = true;
    }
    return this.#found;
  }

  /** Another variant of the shop, evaluated beside the one looked at. */
  evaluated(variant: Variant, mode: Mode, before?: Evaluation): Evaluation {
    const model = shownIn(resolve(this.prepared().shop, this.house.keys, variant), this.view.units);
    const lends = this.#whole.has(mode) ? this.#now.get(mode) : this.#last.get(mode);
    return evaluate(build(this.house, model), mode, before ?? lends);
  }
}

/** Units as the user wishes them; where he wishes nothing else, pressures stay as the shop's files say. */
function shownIn(model: Model, units: Units): Model {
  if (units === null || units === model.show.units) return model;
  return { ...model, show: { ...model.show, units, pressure: units === "inch" ? "psi" : "bar" } };
}

/** The texts of the files with edits written into them; every other byte stays as it was. */
export function written(
  shop: ParsedShop,
  edits: readonly ValueEdit[],
): { readonly texts: ReadonlyMap<string, string>; readonly refused: readonly Refused[] } {
  const texts = new Map<string, string>();
  const refused: Refused[] = [];
  for (const { address, value } of edits) {
    const { file, path } = homeOf(address, shop);
    const before = texts.get(file) ?? shop.files.get(file)?.parsed.text;
    const patched = before === undefined ? { refused: `there is no file ${file}` } : patch(before, path, value, headsOf(file, shop));
    if ("text" in patched) texts.set(file, patched.text);
    else refused.push({ address, says: patched.refused });
  }
  return { texts, refused };
}
