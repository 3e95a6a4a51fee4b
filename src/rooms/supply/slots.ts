// Where the other rooms say what they draw, start and leak.
import { listSlot, slot } from "../../kernel/slot.ts";
import { machine, shop } from "../../kernel/item.ts";

export const draws = slot({
  id: "supply.load",
  per: machine,
  says: "everything on the machine drawing its most at once",
  combine: "sum",
  empty: "zero",
  bound: "upper",
  unit: "VA",
});
export const ownDrive = slot({
  id: "supply.own-drive",
  per: machine,
  says: "largest draw of the machine's main drive",
  combine: "max",
  empty: "zero",
  unit: "VA",
});
export const shopDraws = slot({
  id: "supply.shop-load",
  per: shop,
  says: "everything in the shop drawing its most at once",
  combine: "sum",
  empty: "zero",
  bound: "upper",
  unit: "VA",
});
/** Draws and their shares of time, offered in pairs, so that the two lists run in one order. */
export const eachDraw = listSlot<number>({ id: "supply.each-draw", per: shop, says: "draw of each load", empty: "zero" });
export const eachShare = listSlot<number>({ id: "supply.each-share", per: shop, says: "share of the time of each load", empty: "zero" });
/** The same peaks one by one, for the picture. */
export const peaks = listSlot<number>({
  id: "supply.peaks",
  per: shop,
  says: "largest draw of each machine and compressor",
  empty: "zero",
});
export const starts = slot({
  id: "supply.start",
  per: shop,
  says: "largest current at the instant a motor is switched straight onto the line",
  combine: "max",
  empty: "zero",
  unit: "A",
});
export const leaks = slot({
  id: "supply.leakage",
  per: shop,
  says: "standing leakage of filters and cables",
  combine: "sum",
  empty: "zero",
  unit: "A",
  kind: "small-current",
});
