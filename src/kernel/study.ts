// One shop under one variant, from texts to answers: the road every surface takes, command line and page alike.
import { answer, type Answer } from "./answer.ts";
import { evaluate, type Evaluation, type Mode } from "./evaluate.ts";
import { build, type Graph } from "./graph.ts";
import type { House } from "./house.ts";
import { type ParsedShop, resolve } from "./model/resolve.ts";
import type { Model, Variant } from "./model/node.ts";
import { together } from "./model/report.ts";

export interface Study {
  readonly house: House;
  readonly shop: ParsedShop;
  readonly model: Model;
  readonly graph: Graph;
  readonly evaluation: Evaluation;
  readonly answer: Answer;
}

/** Studies a shop. `before` lends its columns where nothing changed; without figures wanted, only what the checks ask is worked out. */
export function study(house: House, shop: ParsedShop, variant: Variant, mode: Mode, before?: Study, figuresWanted = true): Study {
  const model = resolve(shop, house.keys, variant);
  const graph = build(house, model);
  const evaluation = evaluate(graph, mode, before?.evaluation);
  const said = answer(evaluation, figuresWanted);
  const findings = together(said.findings, (file) => shop.files.get(file)?.parsed.text);
  return { house, shop, model, graph, evaluation, answer: { ...said, findings } };
}
