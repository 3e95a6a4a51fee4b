// Every picture of every room, drawn of the example as found and beside an option, at phone and desk width, in both systems of units.
import { beforeAll, describe, expect, test } from "vitest";
import { readShop } from "../../src/files/shop-folder.ts";
import { draw, type DrawnCase } from "../../src/kernel/draw.ts";
import { itemAddress } from "../../src/kernel/item.ts";
import { asFound } from "../../src/kernel/model/node.ts";
import { parseShop } from "../../src/kernel/model/shop.ts";
import type { Drawn, Frame, Picture } from "../../src/kernel/room.ts";
import { type Study, study } from "../../src/kernel/study.ts";
import { emptyPicture } from "../../src/pictures/empty.ts";
import { isWithin, overlap, writtenBoxes } from "../../src/pictures/words.ts";
import { waywright } from "../../src/rooms/index.ts";

const pictures = waywright.rooms.flatMap((r) => r.pictures);
const parsed = parseShop(readShop("examples/heron").files, waywright.keys);
const option = { machine: "lathe", name: "reconnect-low" };

let found: Study;
let beside: Study;
beforeAll(() => {
  found = study(waywright, parsed, asFound, "full", undefined, false);
  beside = study(waywright, parsed, { ...asFound, options: [option] }, "full", found, false);
}, 60_000);

const frames = [358, 586, 720].flatMap((width) => (["metric", "inch"] as const).map((units): Frame => ({ width, units, prefix: "p" })));
const casesOf = (withOption: boolean): [DrawnCase, ...DrawnCase[]] => [
  { name: "as found", evaluation: found.evaluation },
  ...(withOption ? [{ name: option.name, evaluation: beside.evaluation }] : []),
];

/** Every picture of the kind there is in the example: on each thing, in each frame, alone and beside the option. */
function eachDrawn(p: Picture, look: (got: Drawn, frame: Frame, at: string) => void, among: readonly Frame[] = frames): number {
  let drawn = 0;
  for (const item of found.graph.items.filter((i) => i.scope === p.per)) {
    for (const frame of among) {
      for (const withOption of [false, true]) {
        const got = draw(p, itemAddress(item), casesOf(withOption), frame);
        if ("empty" in got) {
          expect(got.empty.length).toBeGreaterThan(5);
          look(emptyPicture(p.title, got.empty, frame), frame, itemAddress(item));
          continue;
        }
        drawn += 1;
        look(got, frame, itemAddress(item));
      }
    }
  }
  return drawn;
}

const size = (svg: string): { width: number; height: number } => {
  const [, width = "0", height = "0"] = /<svg [^>]*?width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
  return { width: Number(width), height: Number(height) };
};
/** The first tag that is not closed, or closed wrongly. */
function unmatched(svg: string): string | null {
  const open: string[] = [];
  for (const [tag, end, name = "", closed] of svg.matchAll(/<(\/?)([\w-]+)(?:\s[\w-]+="[^"<]*")*\s*(\/?)>/g)) {
    if (end === "/" && open.pop() !== name) return tag;
    if (end !== "/" && closed !== "/") open.push(name);
  }
  return open.at(-1) ?? null;
}

describe.each(pictures.map((p) => [p.id, p] as const))("%s", (_, p) => {
  test("is drawn of the example: well-formed, its finding in words, no word over another or outside", () => {
    const drawn = eachDrawn(p, ({ svg }, frame, at) => {
      const where = `${at}, ${frame.width} px, ${frame.units}`;
      expect(unmatched(svg), where).toBeNull();
      expect(svg, where).not.toMatch(/NaN|undefined|Infinity|null/);
      expect(/aria-label="([^"]*)"/.exec(svg)?.[1]?.length ?? 0, where).toBeGreaterThan(20);
      expect(size(svg).width, where).toBe(frame.width);
      const boxes = writtenBoxes(svg);
      const sheet = { x: -0.5, y: -0.5, width: frame.width + 1, height: size(svg).height + 1 };
      expect(
        boxes.filter((box) => !isWithin(box, sheet)).map((box) => box.text),
        where,
      ).toEqual([]);
      const touching = boxes.flatMap((box, i) =>
        boxes
          .slice(i + 1)
          .filter((other) => overlap(box, other))
          .map((other) => `${box.text} | ${other.text}`),
      );
      expect(touching, where).toEqual([]);
      expect(
        boxes.every((box) => box.size >= 12),
        where,
      ).toBe(true);
    });
    expect(drawn).toBeGreaterThan(0);
  });

  test("is the same drawing twice", () => {
    const [first, second]: string[][] = [[], []];
    eachDrawn(p, ({ svg }) => first?.push(svg), frames.slice(0, 1));
    eachDrawn(p, ({ svg }) => second?.push(svg), frames.slice(0, 1));
    expect(second).toEqual(first);
  });
});

test("a thing that is not there is said, not drawn", () => {
  const [p] = pictures;
  if (!p) throw new Error("no picture");
  expect(draw(p, "lathe/nowhere", casesOf(false), { width: 586, units: "metric", prefix: "p" })).toHaveProperty("empty");
});

const labelOf = (id: string, at: string, units: Frame["units"] = "metric"): string => {
  const p = pictures.find((one) => one.id === id);
  if (!p) throw new Error(`no picture ${id}`);
  const got = draw(p, at, casesOf(true), { width: 586, units, prefix: "p" });
  if ("empty" in got) throw new Error(got.empty);
  return /aria-label="([^"]*)"/.exec(got.svg)?.[1] ?? "";
};
const verdictOf = (s: Study, address: string) => s.answer.checks.find((c) => c.address === address)?.verdict;

describe("what the pictures say of the lathe is what its answers say", () => {
  test("the torque picture names the cut that fails, and no cut that does not", () => {
    const says = labelOf("spindle.torque-picture", "lathe/spindle").split("reconnect-low:")[0] ?? "";
    for (const c of found.answer.checks.filter((one) => one.id === "spindle.cut.torque-holds" && one.root === "lathe")) {
      const name = c.item.replace(/^.*work\//, "").replace(".operations.", " ");
      expect(says.includes(name), `${name} ${c.verdict}`).toBe(c.verdict === "fails");
    }
  });
  test("in inches torque is in foot pounds", () => {
    expect(labelOf("spindle.torque-picture", "lathe/spindle", "inch")).toMatch(/lbf·ft at/);
  });
  test("the bars of the supply end with the verdict of its check", () => {
    expect(labelOf("supply.states-picture", "shop")).toContain(`: ${verdictOf(found, "shop/supply.current-holds") ?? ""}.`);
  });
  test("the terminal box shows the links as found and those of the option", () => {
    expect(labelOf("spindle.motor.box-picture", "lathe/spindle.motor")).toMatch(
      /series, joined 4-7, 5-8, 6-9.*parallel, joined 4-5-6, lines on 1-7, 2-8, 3-9/,
    );
  });
  test("reconnected, the same drive and supply hold full flux to twice the frequency", () => {
    const [one = 0, two = 0] = [...labelOf("spindle.family-picture", "lathe/spindle").matchAll(/full flux to ([\d.]+) Hz/g)].map((m) =>
      Number(m[1]),
    );
    expect(two / one).toBeGreaterThan(1.8);
    expect(two / one).toBeLessThan(2.2);
  });
});
