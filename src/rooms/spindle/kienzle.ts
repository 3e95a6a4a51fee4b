// Kienzle's law as the cuts need it: its text, its needs, the chip it is stated at.
import { known, via } from "../../kernel/figure.ts";
import { materialOfPart } from "../ground/index.ts";
import { specificForceFall, specificForceMain } from "./cut-inputs.ts";

/** The chip thickness at which the main value of the specific force is stated. */
const unitChip = known("unit-chip", {
  symbol: "h_1",
  value: 1e-3,
  unit: "m",
  says: "chip thickness at which the main value holds",
  source: "definition of the main value",
});

export const KIENZLE = "O. Kienzle, VDI-Z 94 (1952); Klocke, Fertigungsverfahren 1, ch. 3";

/** The law as it stands in every formula, with the thickness written in. */
export const kienzle = (h: string): string => `K * kc11 * ((${h}) / h_1)^(-m_c)`;

/** What the law needs but for correction and thickness. */
export const lawNeeds = {
  kc11: via(materialOfPart, specificForceMain),
  m_c: via(materialOfPart, specificForceFall),
  h_1: unitChip,
} as const;
