// The materials the program ships, as a catalogue text: what a user's own catalogue is laid over, key by key.
import { TABLE_RAKE } from "./cutting.ts";
import { type Cuttability, cuttability } from "./materials.ts";

/** What else a material's entry holds, as written in the files. */
interface Stuff {
  readonly density: string;
  readonly expansion: string;
  readonly elastic: string;
  readonly fire: "yes" | "no";
  /** Rake for which its force holds; left out where the tables do not say. */
  readonly rake?: number;
}

const STEEL = { density: "7850 kg/m3", expansion: "11.5 +/- 1 um/(m*K)", elastic: "205 GPa", fire: "no", rake: TABLE_RAKE.steel } as const;
const STAINLESS = {
  density: "7900 kg/m3",
  expansion: "17 +/- 1 um/(m*K)",
  elastic: "193 GPa",
  fire: "no",
  rake: TABLE_RAKE.steel,
} as const;
const ALUMINIUM = { expansion: "23.1 +/- 1 um/(m*K)", fire: "no" } as const;

const stuff: Readonly<Record<keyof typeof cuttability, Stuff>> = {
  "steel-free-cutting": { ...STEEL },
  "steel-structural": { ...STEEL },
  "steel-c45": { ...STEEL },
  "stainless-303": { ...STAINLESS },
  "stainless-304": { ...STAINLESS },
  "stainless-316": { ...STAINLESS, density: "8000 kg/m3", expansion: "16 +/- 1 um/(m*K)" },
  "titanium-6al-4v": {
    density: "4430 kg/m3",
    expansion: "8.6 +/- 0.5 um/(m*K)",
    elastic: "114 GPa",
    fire: "yes",
    rake: TABLE_RAKE.steel,
  },
  "brass-leaded": {
    density: "8500 kg/m3",
    expansion: "20.5 +/- 1 um/(m*K)",
    elastic: "97 GPa",
    fire: "no",
    rake: TABLE_RAKE.brittle,
  },
  "brass-unleaded": { density: "8440 kg/m3", expansion: "20.3 +/- 1 um/(m*K)", elastic: "106 GPa", fire: "no" },
  "aluminium-6061": { ...ALUMINIUM, density: "2700 kg/m3", elastic: "69 GPa" },
  "aluminium-7075": { ...ALUMINIUM, density: "2810 kg/m3", elastic: "72 GPa" },
  magnesium: { density: "1800 kg/m3", expansion: "26 +/- 1 um/(m*K)", elastic: "45 GPa", fire: "yes" },
};

const MPA = 1e6;
/** 765, 0.26: no more digits than the tables have. */
const plain = (x: number): string => String(Number(x.toPrecision(4)));
const range = ([low, high]: readonly [number, number], scale: number): string => `${plain(low / scale)} to ${plain(high / scale)}`;

function entry(name: string, row: Cuttability, s: Stuff): string {
  const keys = [
    `kc: ${range(row.kc11Band, MPA)} N/mm2`,
    `mc: ${range(row.m_cBand, 1)}`,
    ...(s.rake === undefined ? [] : [`kc-rake: ${Math.round((s.rake * 180) / Math.PI)} deg`]),
    `density: ${s.density}`,
    `expansion: ${s.expansion}`,
    `elastic: ${s.elastic}`,
    `fire: ${s.fire}`,
  ];
  return `  # ${row.source}\n  ${name}: { ${keys.join(", ")} }\n`;
}

/** The text, as a file of catalogue/ would hold it. Densities, expansions and moduli: handbook values from memory, unchecked. */
export const shippedCatalogue: string = [
  "# Shipped materials. Density, expansion and elastic modulus are handbook values, unchecked.\nmaterials:\n",
  ...Object.entries(cuttability).map(([name, row]) => entry(name, row, stuff[name as keyof typeof cuttability])), // the keys of a literal are its names
].join("");
