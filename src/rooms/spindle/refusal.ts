// A question that has no answer, as data: the code for programs, the sentence for people.

export interface Refusal {
  readonly code: string;
  /** One sentence: what is missing or contradicts what. */
  readonly refused: string;
}

export function isRefusal(x: object): x is Refusal {
  return "refused" in x;
}
