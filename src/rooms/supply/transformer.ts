// Transformers and phase converters: how large, what they draw when switched on, what a converter cannot do.
import { check, notice } from "../../kernel/check.ts";
import { show } from "../../kernel/display.ts";
import { figure, input } from "../../kernel/figure.ts";
import { machine } from "../../kernel/item.ts";
import {
  converterIdler,
  converterKind,
  converterMotor,
  highVoltage,
  lowVoltage,
  transformerPlate,
  transformerShare,
  voltage,
} from "./inputs.ts";
import { lineFactor } from "./service.ts";
import { draws } from "./slots.ts";
import { phases } from "./source.ts";

/**
 * Rating a transformer needs.
 *
 * S [VA] = S_load / u; S_load [VA] of what hangs on it; u [1] share of its plate it may carry for hours. Source: definition.
 */
export function transformerRating(x: { S_load: number; u: number }): number {
  return x.S_load / x.u;
}

/**
 * Rating an autotransformer needs, since only part of the power passes through its iron. It isolates nothing.
 *
 * S [VA] = S_load (1 - V_low/V_high); S_load [VA]; V_low, V_high [V] the lower and higher of its two voltages.
 * Source: Chapman, Electric Machinery Fundamentals, ch. 2 (apparent power advantage).
 */
export function autotransformerRating(x: { S_load: number; V_low: number; V_high: number }): number {
  return x.S_load * (1 - x.V_low / x.V_high);
}

/** Crest of the in-rush of a transformer as a multiple of its rated crest [1], and how long it lasts [s]. */
export const TRANSFORMER_INRUSH = { low: 8, high: 15, lasts: 0.1, source: "practice, unchecked" } as const;

/** Shaft power a motor gives on a static converter, as a share of its plate [1]; it starts without full torque. */
export const STATIC_CONVERTER_SHARE = { value: 0.6, source: "practice, unchecked" } as const;

/** Idler of a rotary converter as a multiple of the largest motor that starts on it [1]; balance is judged by readings under load. */
export const ROTARY_IDLER = { low: 1.25, high: 1.5, source: "practice, unchecked" } as const;

export const supplyTransformerRating = figure({
  id: "supply.transformer.rating",
  per: machine,
  symbol: "S_n",
  unit: "VA",
  says: "rating a transformer for this machine needs",
  formula: "S_load / u",
  source: "definition; Chapman, Electric Machinery Fundamentals, ch. 2",
  needs: { S_load: draws, u: transformerShare },
  of: transformerRating,
});

export const supplyAutotransformerRating = figure({
  id: "supply.transformer.auto-rating",
  per: machine,
  symbol: "S_a",
  unit: "VA",
  says: "rating an autotransformer needs; it isolates nothing",
  formula: "S_load * (1 - V_low / V_high)",
  source: "Chapman, Electric Machinery Fundamentals, ch. 2 (apparent power advantage)",
  needs: { S_load: draws, V_low: lowVoltage, V_high: highVoltage },
  of: autotransformerRating,
  valid: (x) => (x.V_low < x.V_high ? null : "the lower voltage must be below the higher one"),
});

export const sidesSwapped = notice({
  id: "supply.transformer.sides-swapped",
  per: machine,
  severity: "error",
  code: "contradiction",
  needs: { V_low: lowVoltage, V_high: highVoltage },
  at: lowVoltage,
  of: (x) =>
    x.V_low < x.V_high
      ? null
      : `the lower voltage, ${show(x.V_low, "voltage", { units: "metric" }).text}, is not below the higher one, ${show(x.V_high, "voltage", { units: "metric" }).text}: swapped?`,
});

export const inrushShare = input({
  key: "supply.transformer.inrush",
  per: machine,
  symbol: "k_i",
  unit: "1",
  kind: "ratio",
  says: "in-rush crest of the transformer, as a multiple of its rated crest",
  typical: { value: `${TRANSFORMER_INRUSH.low} to ${TRANSFORMER_INRUSH.high}`, source: TRANSFORMER_INRUSH.source, unchecked: true },
  measure: "Not at home; choose a slow protective device.",
});

export const supplyTransformerInrush = figure({
  id: "supply.transformer.inrush-crest",
  per: machine,
  symbol: "i_crest",
  unit: "A",
  says: "crest of the current when the transformer is switched on, for about a tenth of a second",
  formula: "k_i * sqrt(2) * S_t / (if(n_ph >= 3, sqrt(3), 1) * V)",
  source: "practice, unchecked; rated crest on the side of the supply, which may be the lower one",
  needs: { k_i: inrushShare, S_t: transformerPlate, n_ph: phases, V: voltage },
  of: (x) => (x.k_i * Math.SQRT2 * x.S_t) / (lineFactor(x.n_ph) * x.V),
});

export const transformerCheck = check({
  id: "supply.transformer-carries",
  per: machine,
  asks: "Does the transformer carry everything on the machine?",
  demand: supplyTransformerRating,
  capacity: transformerPlate,
  H: 1.1,
  remedies: [{ does: "a bigger transformer", costs: "its price, weight and in-rush", changes: [transformerPlate] }],
});

export const converterShaftPower = figure({
  id: "supply.converter.shaft-power",
  per: machine,
  symbol: "P_s",
  unit: "W",
  says: "shaft power a motor gives on a static converter, which also starts it without full torque",
  formula: "0.6 * P_m",
  source: STATIC_CONVERTER_SHARE.source,
  needs: { P_m: converterMotor },
  when: [{ word: converterKind, is: ["static"] }],
  of: (x) => STATIC_CONVERTER_SHARE.value * x.P_m,
});

export const idlerShare = input({
  key: "supply.converter.idler-share",
  per: machine,
  symbol: "k_r",
  unit: "1",
  kind: "ratio",
  says: "idler of a rotary converter, as a multiple of the largest motor that starts",
  typical: { value: `${ROTARY_IDLER.low} to ${ROTARY_IDLER.high}`, source: ROTARY_IDLER.source, unchecked: true },
  measure: "Three voltages under load decide, not a rule.",
});

export const converterIdlerWanted = figure({
  id: "supply.converter.idler-wanted",
  per: machine,
  symbol: "P_r",
  unit: "W",
  says: "idler a rotary converter needs for the largest motor that starts on it",
  formula: "k_r * P_m",
  source: ROTARY_IDLER.source,
  needs: { k_r: idlerShare, P_m: converterMotor },
  when: [{ word: converterKind, is: ["rotary"] }],
  of: (x) => x.k_r * x.P_m,
});

export const converterCheck = check({
  id: "supply.converter-starts",
  per: machine,
  asks: "Is the idler of the converter big enough for the largest motor that starts on it?",
  demand: converterIdlerWanted,
  capacity: converterIdler,
  H: 1.1,
  remedies: [
    { does: "a bigger idler", costs: "more idle loss, harder start", changes: [converterIdler] },
    {
      does: "a drive for that motor instead",
      costs: "its price; may be fed by one phase where its papers allow it",
      changes: [converterKind],
    },
  ],
});
