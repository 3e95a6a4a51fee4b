import fc from "fast-check";
import { expect, test } from "vitest";
import type { Block, MachineDrawing, Place } from "./blocks-spec.ts";
import { machineDrawing } from "./blocks.ts";
import { isWithin, overlap, writtenBoxes } from "./words.ts";
import type { Box } from "./words.ts";

const block = (name: string, more: Partial<Block> = {}): Block => ({
  name,
  verdict: "holds",
  figures: ["one", "two"],
  air: true,
  signal: true,
  ...more,
});
const whole: MachineDrawing["blocks"] = {
  supply: block("Supply"),
  drive: block("Drive"),
  motor: block("Motor"),
  belt: block("Belt"),
  spindle: block("Spindle"),
  "bar-feed": block("Bar feed"),
  closer: block("Closer"),
  turret: block("Turret"),
  "cut-off": block("Cut-off"),
  axes: block("Axes"),
  board: block("Board"),
  compressor: block("Compressor"),
  receiver: block("Receiver"),
  regulator: block("Regulator"),
};
const draw = (blocks: MachineDrawing["blocks"], width = 540) => machineDrawing({ title: "Lathe", label: "The lathe.", width, blocks });
const texts = (svg: string) => writtenBoxes(svg).map((box) => box.text);

test("every block of the machine has its name, its verdict and its two figures, at both widths", () => {
  for (const width of [540, 358]) {
    const svg = draw(whole, width);
    for (const { name } of Object.values(whole)) expect(texts(svg).filter((text) => text === name)).toHaveLength(1);
    expect(texts(svg).filter((text) => text === "holds")).toHaveLength(14);
    expect(texts(svg).filter((text) => text === "two")).toHaveLength(14);
  }
});

test("what a machine has not is not drawn, nor the lines to it, nor their kind in the key", () => {
  const { supply, drive, motor } = whole;
  if (!supply || !drive || !motor) throw new Error("blocks are missing");
  const svg = draw({ supply, drive, motor });
  expect(texts(svg)).not.toContain("air");
  expect(texts(svg)).not.toContain("signal");
  expect(texts(svg)).toContain("power, torque");
  expect(svg.match(/stroke-width="3"/g)?.length).toBe(3); // Two power lines and one in the key.
  expect(texts(draw({ motor }))).not.toContain("power, torque");
});

test("a thing that uses no air has no air line, one that says nothing to the board no signal", () => {
  const arrows = (svg: string, tone: string) => [...svg.matchAll(new RegExp(`Z" class="${tone}"`, "g"))].length;
  const dry = draw({ ...whole, turret: block("Turret", { air: false, signal: false }) });
  expect(arrows(draw(whole), "fi3") - arrows(dry, "fi3")).toBe(1);
  expect(arrows(draw(whole), "fa") - arrows(dry, "fa")).toBe(1);
});

test("blocks that lead somewhere are links with a name, and the drawing is then a group, not an image", () => {
  const svg = draw({ ...whole, drive: block("Drive", { href: "#/spindle", verdict: "fails" }) });
  expect(svg).toContain('<a href="#/spindle" class="block" aria-label="Drive, fails, one, two">');
  expect(svg).toContain('role="group"');
  expect(draw(whole)).toContain('role="img"');
});

test("a carousel is round, a turret has as many corners as stations", () => {
  const with8 = machineDrawing({
    title: "",
    label: "",
    width: 540,
    blocks: { turret: block("Turret") },
    tools: { kind: "turret", stations: 8 },
  });
  expect(texts(with8)).toContain("8");
  const carousel = machineDrawing({
    title: "",
    label: "",
    width: 540,
    blocks: { turret: block("Carousel") },
    tools: { kind: "carousel", stations: 12 },
  });
  expect(carousel.match(/<circle/g)?.length).toBe(12 + 2 + 1); // Pockets, rim and hub, and the disc of the verdict.
});

const places = Object.keys(whole) as Place[]; // Object.keys forgets the type of its keys.
const line = fc.constantFrom("5.5 bar", "series 460 V, as found, two leads swapped", "68 s of hold (43 to 148)", "M");
const anyBlock = fc.record({
  name: fc.constantFrom("Belt", "Compressor of the shop", "Tailstock and quill with a long name"),
  verdict: fc.constantFrom("holds" as const, "tight" as const, "fails" as const, "open" as const),
  figures: fc.oneof(fc.constant([] as const), fc.tuple(line), fc.tuple(line, line)),
  air: fc.boolean(),
  signal: fc.boolean(),
});
const anyMachine = fc.record({
  width: fc.oneof(fc.constantFrom(320, 358, 390, 480, 540), fc.integer({ min: 320, max: 900 })),
  note: fc.constantFrom("9 records, 11 typical values", "n", "a very long note about where all of this comes from and when"),
  blocks: fc
    .tuple(fc.subarray(places), fc.array(anyBlock, { minLength: 14, maxLength: 14 }))
    .map(([some, blocks]) => Object.fromEntries(some.map((place, i) => [place, blocks[i] ?? block("x")])) as MachineDrawing["blocks"]), // As above.
});

/** Stretches of every drawn line of the lanes (not the pad, not the symbols' own strokes). */
function stretches(svg: string): Box[] {
  const wires = [...svg.matchAll(/<path d="([^"]+)" class="nf (?:i|ac|i3)" stroke-width="(?:3|5|1\.1|1\.25)"[^>]*\/>/g)].map(
    (match) => match[1] ?? "",
  );
  return wires.flatMap((d) =>
    d
      .split("M")
      .filter((run) => /^[\d.\- L]+$/.test(run) && run !== "")
      .flatMap((run) => {
        const points = run.split("L").map((pair) => pair.split(" ").map(Number));
        return points.slice(1).map((to, i) => {
          const from = points[i] ?? [];
          const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = [from[0], from[1], to[0], to[1]];
          return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: Math.abs(x2 - x1), height: Math.abs(y2 - y1) };
        });
      }),
  );
}

test("whatever the machine has and whatever is said of it: no words overlap, none leaves the drawing, no line runs through any", () => {
  fc.assert(
    fc.property(anyMachine, (random) => {
      const svg = machineDrawing({ title: "The lathe as found in the corner of the shop", label: "x", ...random });
      const height = Number(/height="([\d.]+)"/.exec(svg)?.[1]);
      const boxes = writtenBoxes(svg);
      expect(boxes.filter((box) => !isWithin(box, { x: 0, y: 0, width: random.width, height }))).toEqual([]);
      expect(boxes.filter((box, i) => boxes.slice(i + 1).some((other) => overlap(box, other))).map((box) => box.text)).toEqual([]);
      const wires = stretches(svg);
      // The frame of a block is beside its words, a wire may end there: half a pixel of air is enough.
      const hit = boxes.filter((box) => wires.some((wire) => overlap(wire, box, -0.5)));
      expect(hit.map((box) => box.text)).toEqual([]);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }),
    { seed: 11, numRuns: 300 },
  );
});
