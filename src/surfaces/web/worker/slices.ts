// Long work for a question, done in slices: edits and other questions come in between, and a newer view ends it.
import type { Evaluation } from "../../../kernel/evaluate.ts";
import type { Bench } from "./bench.ts";

/** A slice; a single figure may take longer. */
const slice = 12; // ms

const { port1, port2 } = new MessageChannel();

/** Resolves after the messages that wait. */
function turn(): Promise<void> {
  return new Promise((done) => {
    port1.addEventListener("message", () => done(), { once: true });
    port1.start();
    port2.postMessage(null);
  });
}

/** Works out every column of an evaluation; false when what is looked at changed meanwhile and nobody wants it any more. */
export async function workedOff(bench: Bench, { graph, filled }: Evaluation): Promise<boolean> {
  const { pass } = bench.view;
  let until = performance.now() + slice;
  for (const cell of graph.cells.values()) {
    if (performance.now() > until) {
      await turn();
      if (bench.view.pass !== pass) return false;
      until = performance.now() + slice;
    }
    filled.get(cell);
  }
  return true;
}
