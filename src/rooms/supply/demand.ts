// What the shop draws: at most, everything at once; on the mean, by the shares of time.
import { figure, value } from "../../kernel/figure.ts";
import { machine, shop } from "../../kernel/item.ts";
import { offer } from "../../kernel/slot.ts";
import { existing, load, loadPower, loadShare, voltage } from "./inputs.ts";
import { lineFactor } from "./service.ts";
import { draws, eachDraw, eachShare, peaks, shopDraws } from "./slots.ts";
import { phases, supplyCapacity } from "./source.ts";

export const loadDraw = figure({
  id: "supply.load-draw",
  per: load,
  symbol: "S_i",
  unit: "VA",
  says: "draw of the load",
  formula: "P",
  source: "taken at power factor 1; small loads hardly show",
  needs: { P: loadPower },
  of: (x) => x.P,
});
export const loadOffer = offer(draws, loadDraw);
export const loadInList = offer(eachDraw, loadDraw);
export const loadShareInList = offer(eachShare, loadShare);

export const machinePeak = figure({
  id: "supply.machine-peak",
  per: machine,
  symbol: "S_m",
  unit: "VA",
  says: "largest draw of the machine, everything on it at once",
  formula: "S",
  source: "sum of apparent powers, at most the truth",
  needs: { S: draws },
  of: (x) => x.S,
  signs: { S: "+" },
});
export const machineOffer = offer(shopDraws, machinePeak);
export const machineInPeaks = offer(peaks, machinePeak);

export const drawList = value({
  id: "supply.draws",
  per: shop,
  says: "draw of each load",
  each: { unit: "VA" },
  needs: { each: eachDraw },
  of: (x): readonly number[] => x.each.map((s) => s.value),
});
export const shareList = value({
  id: "supply.shares",
  per: shop,
  says: "share of the time of each load",
  each: { unit: "1", kind: "share" },
  needs: { draws: eachDraw, shares: eachShare },
  // By the thing they belong to: what has a share and no draw yet must not shift the others.
  of: (x): readonly number[] => x.draws.map((d) => x.shares.find((s) => s.item === d.item)?.value ?? Number.NaN),
});

export const supplyDemand = figure({
  id: "supply.demand",
  per: shop,
  symbol: "S_mean",
  unit: "VA",
  says: "mean draw of the shop, each load by its share of the time",
  formula: "sum(S * u)",
  source: "definition; shares are the user's until a time line knows them",
  needs: { S: drawList, u: shareList },
  of: (x) => x.S.reduce((sum, S, i) => sum + S * (x.u[i] ?? 0), 0),
  valid: (x) => (x.S.length === x.u.length ? null : "a share is wanted for each draw"),
});

export const supplyPeak = figure({
  id: "supply.peak-demand",
  per: shop,
  symbol: "S_peak",
  unit: "VA",
  says: "largest draw of the shop, everything at once",
  formula: "S",
  source: "sum of apparent powers, at most the truth",
  needs: { S: shopDraws },
  of: (x) => x.S,
  signs: { S: "+" },
});

export const capacityLeft = figure({
  id: "supply.capacity-left",
  per: shop,
  symbol: "S_left",
  unit: "VA",
  says: "what the service has left with everything running",
  formula: "S_c - if(n_ph >= 3, sqrt(3), 1) * V * I_ex - S_peak",
  source: "definition; below zero it is overdrawn",
  needs: { S_c: supplyCapacity, n_ph: phases, V: voltage, I_ex: existing, S_peak: supplyPeak },
  of: (x) => x.S_c - lineFactor(x.n_ph) * x.V * x.I_ex - x.S_peak,
  signs: { S_c: "+", I_ex: "-", S_peak: "-" },
});
