// The library: a shop read from texts, studied, and asked for its working; and single figures without a shop. Nothing here touches a disk.
export { waywright } from "./rooms/index.ts";
export { parseShop, type ParsedShop } from "./kernel/model/shop.ts";
export { asFound, type Variant } from "./kernel/model/node.ts";
export { schemas } from "./kernel/model/schema.ts";
export { study, type Study } from "./kernel/study.ts";
export type { Answer, CheckAnswer, FigureAnswer, InputAnswer } from "./kernel/answer.ts";
export type { Verdict } from "./kernel/check.ts";
export type { Finding } from "./kernel/finding.ts";
export { working, type Working } from "./kernel/working.ts";
export { workable, type Worked, type WorkError, workOut } from "./kernel/work.ts";
export { draw } from "./kernel/draw.ts";
