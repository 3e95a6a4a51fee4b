// A column of the comparison, and where it is looked at.
import { hrefOf } from "../model/route.ts";
import { route } from "../model/place.ts";
import type { ColumnReply } from "../worker/comparing.ts";
import type { Names } from "./columns.ts";

export interface Column {
  readonly key: string;
  readonly names: Names;
  readonly name: string;
  readonly title: string;
  readonly isTried: boolean;
  readonly isChosen: boolean;
  readonly reply: ColumnReply | null;
  readonly isStale: boolean;
}

/** The address of a column, with the working of something in it or without. */
export function columnLink(root: string, { names, isTried }: Column, working: string | null): string {
  const own = new Map(route.value.own);
  if (isTried) own.set("at", "tried");
  else own.delete("at");
  return hrefOf({ ...route.value, own, options: names.map((name) => `${root}/${name}`), working });
}
