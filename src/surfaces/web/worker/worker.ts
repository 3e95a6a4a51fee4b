// The worker: it alone computes. A pass is worked off in slices, and between two of them newer messages come in: an edit ends the passes
// of older ones, and a question never waits long.
import { answer, figureAnswers, num } from "../../../kernel/answer.ts";
import type { Evaluation, Mode } from "../../../kernel/evaluate.ts";
import type { Cell } from "../../../kernel/graph.ts";
import { judge } from "../../../kernel/verdict.ts";
import { asks } from "./asks.ts";
import { Bench } from "./bench.ts";
import { planOf } from "./plan.ts";
import type { FromWorker, ToWorker } from "./protocol.ts";
import type { Refused } from "./view.ts";

/** Nominal numbers first, then bands with estimates in the place of simulations, then all of it. */
const modes: readonly Mode[] = ["nominal", "quick", "full"];
/** A slice of a pass; a single figure may take longer. */
const slice = 12; // ms
/** Letters come in bursts: bands wait until the burst is over. */
const pause = 120; // ms

const bench = new Bench();

/** The pass under way: what of it is still to be worked out. */
interface Pass {
  readonly number: number;
  readonly mode: Mode;
  readonly evaluation: Evaluation;
  readonly left: Iterator<Cell>;
}
let under: Pass | null = null;
let waiting: ReturnType<typeof setTimeout> | undefined;

const post = (message: FromWorker): void => self.postMessage(message);
const saysOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

self.onmessage = ({ data }: MessageEvent<ToWorker>): void => {
  switch (data.say) {
    case "texts":
      bench.lay(data.texts);
      return;
    case "view":
      bench.look(data.view);
      clearTimeout(waiting);
      begin("nominal");
      return;
    case "ask":
      void reply(data);
  }
};

/** A long answer is worked off in slices too (slices.ts). */
async function reply({ id, name, of }: Extract<ToWorker, { say: "ask" }>): Promise<void> {
  try {
    // The page sends what the question takes: both sides are typed by the same table.
    post({ say: "reply", id, reply: await (asks[name] as (bench: Bench, of: unknown) => unknown)(bench, of) });
  } catch (error) {
    post({ say: "no-reply", id, says: saysOf(error) });
  }
}

/** The next slice, after the messages that wait. */
const turn = new MessageChannel();
turn.port1.onmessage = () => guarded(work);
const later = (): void => turn.port2.postMessage(null);

function guarded(of: () => void): void {
  try {
    of();
  } catch (error) {
    under = null;
    post({ say: "failed", pass: bench.view.pass, says: saysOf(error) });
  }
}

function begin(mode: Mode): void {
  guarded(() => {
    const evaluation = bench.evaluation(mode);
    under = { number: bench.view.pass, mode, evaluation, left: evaluation.graph.cells.values() };
    later();
  });
}

function work(): void {
  // Texts or a view may have changed what is looked at since the slice before.
  if (under === null || under.number !== bench.view.pass) return;
  const { mode, evaluation, left, number } = under;
  const until = performance.now() + slice;
  while (performance.now() < until) {
    const { value, done } = left.next();
    if (done) {
      under = null;
      tell(number, mode, evaluation);
      const next = modes[modes.indexOf(mode) + 1];
      if (next === "quick") waiting = setTimeout(() => begin(next), pause);
      else if (next) begin(next);
      return;
    }
    evaluation.filled.get(value);
  }
  later();
}

/** What the last whole answer was about: its checks and figures by address, and its units. */
let told = "";

function tell(pass: number, mode: Mode, evaluation: Evaluation): void {
  bench.finished(mode);
  const { model, cells, checks } = evaluation.graph;
  const about = [...cells.keys(), ...checks.map((c) => c.address), model.show.units].join(" ");
  const refused = [...bench.prepared().refused, ...refusedTries(model.findings)];
  if (mode === "nominal" && about === told) {
    const margins = Object.fromEntries(judge(evaluation).map((j) => [j.cell.address, num(j.margin.nominal)]));
    post({ say: "numbers", pass, margins, figures: figureAnswers(evaluation), refused });
    return;
  }
  told = about;
  const said = answer(evaluation);
  const findings = said.findings.filter((f) => f.place.file !== "tried");
  post({ say: "answer", pass, mode, answer: { ...said, findings }, plan: planOf(model), refused });
}

/** Values laid over that the loader did not take, told by their line among the values tried. */
function refusedTries(findings: readonly { place: { file: string; line: number }; severity: string; says: string }[]): Refused[] {
  const { tries } = bench.prepared().variant;
  return findings.flatMap(({ place, severity, says }) => {
    const one = place.file === "tried" && severity === "error" ? tries[place.line - 1] : undefined;
    return one ? [{ address: `${one.root}/${one.path}`, says }] : [];
  });
}
