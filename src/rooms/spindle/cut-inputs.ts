// What is written of a cut: the operation, its tool and insert, the material, the stock.
import { input, wordInput } from "../../kernel/figure.ts";
import { insert, material, operation, part, tool } from "../ground/index.ts";
import { FORM_TAP_FACTOR, HIGH_SPEED_STEEL_FACTOR, TABLE_RAKE, WEAR_FACTOR } from "./cutting.ts";
import { cuttability } from "./materials.ts";
import { topSpeedWanted } from "./spindle-inputs.ts";

const plan = "Your process sheet or program decides.";

export const operationKind = wordInput({
  key: "kind",
  per: operation,
  says: "kind of operation",
  words: ["turn", "bore", "face", "groove", "part-off", "drill", "tap", "thread", "mill"],
  required: true,
  measure: plan,
});
export const surfaceSpeed = input({
  key: "surface-speed",
  per: operation,
  symbol: "v_c",
  unit: "m/s",
  kind: "cutting-speed",
  says: "surface speed of the cut",
  measure: plan,
});
export const givenSpeed = input({
  key: "speed",
  per: operation,
  symbol: "n",
  unit: "rad/s",
  says: "spindle speed of the operation",
  measure: plan,
});
export const speedCap = input({
  key: "speed-limit",
  per: operation,
  symbol: "n_lim",
  unit: "rad/s",
  says: "speed the program limits the spindle to",
  typical: { of: topSpeedWanted, source: "no limit written: the highest speed wanted of the spindle" },
  measure: "The limit word at the head of the program.",
});
export const feed = input({ key: "feed", per: operation, symbol: "f", unit: "m", says: "feed a turn", measure: plan });
export const feedPerTooth = input({ key: "feed-per-tooth", per: operation, symbol: "f_z", unit: "m", says: "feed a tooth", measure: plan });
export const depth = input({ key: "depth", per: operation, symbol: "a_p", unit: "m", says: "depth of cut", measure: plan });
export const cutWidth = input({ key: "width", per: operation, symbol: "a_e", unit: "m", says: "width of cut", measure: plan });
export const cutDiameter = input({ key: "diameter", per: operation, symbol: "d", unit: "m", says: "diameter being cut", measure: plan });
export const hole = input({
  key: "hole",
  per: operation,
  symbol: "d_0",
  unit: "m",
  says: "hole that is there before drilling",
  typical: { value: "0 mm", source: "into the full, where nothing else is said" },
  measure: plan,
});
export const wear = input({
  key: "wear",
  per: operation,
  symbol: "K_w",
  unit: "1",
  kind: "ratio",
  says: "what wear adds to the cutting force before the edge is changed",
  typical: { value: `${WEAR_FACTOR.sharp} to ${WEAR_FACTOR.worn}`, source: `sharp to worn, ${WEAR_FACTOR.source}`, unchecked: true },
  measure: "Drive power of the same cut with a new edge and just before it is changed, idle power taken off both.",
});
export const thrustShare = input({
  key: "thrust-share",
  per: operation,
  symbol: "k_a",
  unit: "1",
  kind: "ratio",
  says: "force along the spindle as a share of the cutting force",
  typical: { value: "0.3 to 0.7", source: "feed force sharp to worn, handbook after Klocke, unchecked", unchecked: true },
  measure: "Motor current of the feed axis in the cut less that in air.",
});
export const pitch = input({
  key: "pitch",
  per: operation,
  symbol: "p",
  unit: "m",
  says: "pitch of the thread",
  measure: "The thread's name.",
});
export const passes = input({
  key: "passes",
  per: operation,
  symbol: "N",
  unit: "1",
  kind: "count",
  says: "passes of the thread",
  typical: { value: "5 to 9", source: "fine threads in steel, practice, unchecked", unchecked: true },
  measure: plan,
});
export const firstCut = input({
  key: "first-cut",
  per: operation,
  symbol: "a_1",
  unit: "m",
  says: "depth of the first thread pass",
  typical: { value: "0.15 to 0.25 mm", source: "fine threads in steel, practice, unchecked", unchecked: true },
  measure: plan,
});
export const infeed = wordInput({
  key: "infeed",
  per: operation,
  says: "how a thread tool is fed in",
  words: ["flank", "radial"],
  typical: ["radial"],
  source: "what every control can do, and the dearer of the two in torque",
  measure: plan,
});
export const engagement = wordInput({
  key: "engagement",
  per: operation,
  says: "how the cutter stands to the work",
  words: ["beside", "centred"],
  typical: ["beside", "centred"],
  source: "nobody has said; they differ where the cutter is wider than the cut",
  measure: "Beside: its edge runs along the work. Centred: the work passes under its middle.",
});

export const toolKind = wordInput({
  key: "kind",
  per: tool,
  says: "kind of tool",
  words: ["turning", "boring", "blade", "threading", "drill", "tap", "form-tap", "reamer", "mill", "stop"],
  measure: "Look: a forming tap has no flutes.",
});
export const toolDiameter = input({
  key: "diameter",
  per: tool,
  symbol: "D",
  unit: "m",
  says: "diameter of the tool",
  measure: "Micrometer.",
});
export const toolWidth = input({ key: "width", per: tool, symbol: "b", unit: "m", says: "width of the blade", measure: "Micrometer." });
export const point = input({
  key: "point",
  per: tool,
  symbol: "sigma",
  unit: "rad",
  says: "point angle of the drill",
  typical: { value: "118 to 140 deg", source: "general to short-flute drills, makers' lists" },
  measure: "Gauge, or the maker's list.",
});
export const teeth = input({
  key: "teeth",
  per: tool,
  symbol: "z",
  unit: "1",
  kind: "count",
  says: "teeth of the cutter",
  measure: "Count them.",
});
export const toolFactor = input({
  key: "force-factor",
  per: tool,
  symbol: "K_t",
  unit: "1",
  kind: "ratio",
  says: "what the tool itself adds to the cutting force",
  typical: {
    value: "1",
    source: `carbide; high-speed steel ${HIGH_SPEED_STEEL_FACTOR.value} (${HIGH_SPEED_STEEL_FACTOR.source})`,
    unchecked: true,
  },
  measure: "1 for carbide, 1.2 for high-speed steel, or a test cut with this tool.",
});
export const drillFactor = input({
  key: "drill-factor",
  per: tool,
  symbol: "K_d",
  unit: "1",
  kind: "ratio",
  says: "what a drill takes more than a turning tool",
  typical: { value: "1 to 1.3", source: "chisel edge and margins, handbook, unchecked", unchecked: true },
  measure: "Drive power of a hole less idle, against the figure.",
});
export const tapFriction = input({
  key: "friction",
  per: tool,
  symbol: "K_f",
  unit: "1",
  kind: "ratio",
  says: "what friction adds to the torque of a tap",
  typical: { value: "1.3 to 2", source: "practice, unchecked", unchecked: true },
  measure: "Drive power while tapping less idle, against the figure; oil and a larger core hole bring it down.",
});
export const tapChip = input({
  key: "chip",
  per: tool,
  symbol: "h",
  unit: "m",
  says: "chip of one tooth of a tap",
  typical: { value: "0.02 to 0.06 mm", source: "3 or 4 flutes, chamfer of 2 to 5 threads; geometry" },
  measure: "Depth of the thread over flutes times chamfered threads.",
});
export const formingFactor = input({
  key: "forming",
  per: tool,
  symbol: "K_form",
  unit: "1",
  kind: "ratio",
  says: "torque of a forming tap against a cutting one",
  typical: { value: `${FORM_TAP_FACTOR.low} to ${FORM_TAP_FACTOR.high}`, source: FORM_TAP_FACTOR.source, unchecked: true },
  measure: "Drive power while forming less idle, against a cutting tap in the same plate.",
});

export const edgeAngle = input({
  key: "edge-angle",
  per: insert,
  symbol: "kappa",
  unit: "rad",
  says: "lead angle of the cutting edge",
  typical: { value: "90 to 95 deg", source: "usual for turning to a shoulder; a shell end mill has 90" },
  measure: "The holder's drawing, or a protractor against the feed.",
});
export const rake = input({
  key: "rake",
  per: insert,
  symbol: "gamma",
  unit: "rad",
  says: "rake of the edge as it stands in its holder",
  typical: { value: "0 to 10 deg", source: "inserts of small lathes, makers' lists", unchecked: true },
  measure: "The insert's list, less what the holder tips.",
});
export const insertWidth = input({
  key: "width",
  per: insert,
  symbol: "b",
  unit: "m",
  says: "width of the insert",
  measure: "Micrometer.",
});

const rows = Object.values(cuttability);
const whole = (of: (row: (typeof rows)[number]) => readonly [number, number], scale: number): string =>
  `${Math.min(...rows.map((r) => of(r)[0])) / scale} to ${Math.max(...rows.map((r) => of(r)[1])) / scale}`;
const ANY = "nobody has said which material: anything in the shipped table";

export const specificForceMain = input({
  key: "kc",
  per: material,
  symbol: "kc11",
  unit: "Pa",
  kind: "stress",
  says: "specific cutting force at a chip of 1 mm by 1 mm",
  typical: { value: `${whole((r) => r.kc11Band, 1e6)} N/mm2`, source: ANY, unchecked: true },
  measure: "Three test cuts at three feeds (step cut-test), or the shipped table.",
});
export const specificForceFall = input({
  key: "mc",
  per: material,
  symbol: "m_c",
  unit: "1",
  kind: "ratio",
  says: "how fast the specific force falls with chip thickness",
  typical: { value: whole((r) => r.m_cBand, 1), source: ANY, unchecked: true },
  measure: "Three test cuts at three feeds (step cut-test), or the shipped table.",
});
const degrees = (angle: number): number => Math.round((angle * 180) / Math.PI);
export const tableRake = input({
  key: "kc-rake",
  per: material,
  symbol: "gamma_0",
  unit: "rad",
  says: "rake for which that force holds",
  typical: {
    value: `${degrees(TABLE_RAKE.steel)} deg`,
    source: `tables for turning; ${degrees(TABLE_RAKE.brittle)} deg where chips are brittle; handbook, unchecked`,
    unchecked: true,
  },
  measure: "From the table the force was taken from; the rake of your own tool after a test cut.",
});

export const stockSize = input({
  key: "stock.size",
  per: part,
  symbol: "d_st",
  unit: "m",
  says: "size of the stock across",
  measure: "Micrometer on the bar.",
});
