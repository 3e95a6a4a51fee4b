// A quantity's symbol: slanted serif letter, upright index, Greek where it is named so.
import type { JSX } from "preact";

const greek: Readonly<Record<string, string>> = {
  alpha: "α",
  beta: "β",
  gamma: "γ",
  delta: "δ",
  eta: "η",
  theta: "θ",
  Th: "Θ",
  lambda: "λ",
  mu: "μ",
  nu: "ν",
  pi: "π",
  rho: "ρ",
  sigma: "σ",
  tau: "τ",
  phi: "φ",
  w: "ω",
  omega: "ω",
  epsilon: "ε",
  kappa: "κ",
  Omega: "Ω",
  Delta: "Δ",
  Phi: "Φ",
};

export function Symbol_({ text }: { text: string }): JSX.Element {
  const [head = "", ...rest] = text.split("_");
  const letter = greek[head] ?? head.replace(/^d(?=[A-Z])/, "Δ");
  return (
    <i class="sym">
      {letter}
      {rest.length === 0 ? null : <sub>{rest.join(" ")}</sub>}
    </i>
  );
}
