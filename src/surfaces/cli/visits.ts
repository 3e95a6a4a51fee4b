// What the questions of `new` leave open, by the place where it is found out, in the order in which it decides whether to buy.
import { type Answers, known } from "./new-files.ts";

interface Visit {
  readonly where: string;
  /** Name of the question, and what is looked for there. */
  readonly finds: Readonly<Record<string, string>>;
}

/** The service comes first: it decides what may be bought at all. Then the motor that it must feed, the cable between them, the work, the air. */
export const visits: readonly Visit[] = [
  {
    where: "At the main panel, by a licensed person (mains can kill)",
    finds: {
      service: "kind of service",
      voltage: "voltage between lines",
      rating: "rating of the service",
      existing: "what the house already draws, with a clamp logger for a week",
    },
  },
  {
    where: "At the spindle motor, isolated and locked off",
    finds: {
      "motor-kind": "kind of motor",
      "motor-power": "power",
      "motor-voltage": "voltage or voltages",
      "motor-current": "current at each",
      "motor-frequency": "frequency",
      "motor-speed": "speed on the plate",
      leads: "leads in the terminal box",
      connected: "how they are joined",
    },
  },
  {
    where: "Along the cable to the machine, with licensed practice for what the local code allows",
    finds: { ampacity: "current allowed on it", "run-size": "section of its conductors", "run-length": "its length one way" },
  },
  { where: "On the drawings of your parts", finds: { "highest-speed": "highest spindle speed that the smallest diameters ask for" } },
  {
    where: "At the compressor",
    finds: { "air-delivery": "what it delivers, and of which air", "air-receiver": "volume of the receiver" },
  },
];

export interface FindOut {
  readonly where: string;
  readonly what: readonly string[];
}

/** Visits that are still to be made, each with what was not answered. */
export function leftOpen(answers: Answers): FindOut[] {
  return visits.flatMap(({ where, finds }) => {
    const what = Object.entries(finds).flatMap(([name, says]) => (known(answers, name) === null ? [says] : []));
    return what.length === 0 ? [] : [{ where, what }];
  });
}
