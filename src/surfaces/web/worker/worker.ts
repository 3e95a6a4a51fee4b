// The worker: it alone computes. Messages come in order; between two passes it lets newer ones in, so that an edit ends the passes of older ones.
import { answer } from "../../../kernel/answer.ts";
import type { Mode } from "../../../kernel/evaluate.ts";
import { asks } from "./asks.ts";
import { Bench } from "./bench.ts";
import { planOf } from "./plan.ts";
import type { FromWorker, ToWorker } from "./protocol.ts";
import { partsOf, type Refused } from "./view.ts";

const bench = new Bench();
let due: readonly Mode[] = [];

const post = (message: FromWorker): void => self.postMessage(message);
const saysOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

self.onmessage = ({ data }: MessageEvent<ToWorker>): void => {
  switch (data.say) {
    case "texts":
      bench.lay(data.texts);
      return;
    case "view":
      bench.look(data.view);
      due = data.modes;
      later();
      return;
    case "ask":
      try {
        // The page sends what the question takes: both sides are typed by the same table.
        const reply = (asks[data.name] as (bench: Bench, of: unknown) => unknown)(bench, data.of);
        post({ say: "reply", id: data.id, reply });
      } catch (error) {
        post({ say: "no-reply", id: data.id, says: saysOf(error) });
      }
  }
};

/** One pass, after the messages that wait. */
const turn = new MessageChannel();
turn.port1.onmessage = () => {
  const [mode, ...rest] = due;
  if (mode === undefined) return;
  due = rest;
  pass(mode);
  if (rest.length > 0) later();
};
const later = (): void => turn.port2.postMessage(null);

function pass(mode: Mode): void {
  const { pass: number } = bench.view;
  try {
    const evaluation = bench.evaluation(mode);
    const { model } = evaluation.graph;
    const said = answer(evaluation);
    const findings = said.findings.filter((f) => f.place.file !== "tried");
    post({
      say: "answer",
      pass: number,
      mode,
      answer: { ...said, findings },
      plan: planOf(model),
      refused: [...bench.prepared().refused, ...refusedTries(said.findings)],
    });
  } catch (error) {
    post({ say: "failed", pass: number, says: saysOf(error) });
  }
}

/** Values laid over that the loader did not take, told by their line among the values tried. */
function refusedTries(findings: readonly { place: { file: string; line: number }; severity: string; says: string }[]): Refused[] {
  const { tries } = bench.prepared().variant;
  return findings.flatMap(({ place, severity, says }) => {
    const one = place.file === "tried" && severity === "error" ? tries[place.line - 1] : undefined;
    const edit = one && bench.view.values.find(({ address }) => partsOf(address).root === one.root && partsOf(address).path === one.path);
    return edit ? [{ address: edit.address, says }] : [];
  });
}
