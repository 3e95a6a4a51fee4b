// The pictures of a room: which there are on a machine, and each drawn for the width it gets.
import type { Drawn } from "../../../kernel/room.ts";
import { draw, type DrawnCase } from "../../../kernel/draw.ts";
import { itemAddress } from "../../../kernel/item.ts";
import { emptyPicture } from "../../../pictures/empty.ts";
import type { Bench } from "./bench.ts";

export interface PictureHead {
  readonly id: string;
  readonly item: string;
  readonly title: string;
}

export function pictures(bench: Bench, of: { readonly machine: string; readonly room: string }): readonly PictureHead[] {
  const { graph } = bench.best();
  const room = graph.house.rooms.find((r) => r.name === of.room);
  return (room?.pictures ?? []).flatMap((p) =>
    graph.items
      .filter((i) => i.scope === p.per && (i.root === of.machine || i.root === "shop"))
      .map((i) => ({ id: p.id, item: itemAddress(i), title: p.title })),
  );
}

export interface PictureWanted {
  readonly id: string;
  readonly item: string;
  readonly width: number;
  /** Makes ids inside the drawing unique on the page. */
  readonly prefix: string;
  /** How the laid options are called beside the machine as found. */
  readonly option: string;
}

/** With options laid over, the machine as found is drawn beside them. */
export function picture(bench: Bench, of: PictureWanted): Drawn {
  const now = bench.best();
  const { house, model } = now.graph;
  const declared = house.rooms.flatMap((r) => r.pictures).find((p) => p.id === of.id);
  if (!declared) throw new Error(`there is no picture ${of.id}`);
  const { variant } = bench.prepared();
  const frame = { width: of.width, units: model.show.units, prefix: of.prefix };
  const cases: [DrawnCase, ...DrawnCase[]] =
    variant.options.length === 0
      ? [{ name: "as found", evaluation: now }]
      : [
          { name: "as found", evaluation: bench.found(now.mode) },
          { name: of.option, evaluation: now },
        ];
  const drawn = draw(declared, of.item, cases, frame);
  return "empty" in drawn ? emptyPicture(declared.title, drawn.empty, frame) : drawn;
}
