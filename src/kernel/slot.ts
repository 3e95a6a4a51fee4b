// Slots: a room that sums or compares declares a slot and imports nobody; later rooms offer figures to it.
import { type Kind, kindOf, type Measure } from "./unit.ts";
import type { Link, Ref, When } from "./ref.ts";
import type { Scope } from "./item.ts";

export interface Slot<T = number> extends Ref<T> {
  readonly decl: "slot";
  readonly says: string;
  readonly combine: "sum" | "max" | "min" | "list";
  readonly empty: "refuse" | "zero";
  /** The sum is at most the truth, or at least: all at once where nobody has shown that they take turns. */
  readonly bound?: "upper" | "lower";
  readonly unit: string;
  readonly kind: Kind | null;
  /** Where something would have to be entered when it is empty: key below the thing, and how to find it out. */
  readonly enter?: { readonly key: string; readonly measure: string };
}

/** One share of a list slot. */
export interface Share<T> {
  /** Name of the thing, and its address. */
  readonly from: string;
  readonly item: string;
  readonly value: T;
}

/** A slot of numbers that are summed or compared. */
export function slot(
  d: {
    id: string;
    per: Scope;
    says: string;
    combine: "sum" | "max" | "min";
    empty: "refuse" | "zero";
    bound?: "upper" | "lower";
  } & Measure,
): Slot<number> {
  return { ...d, decl: "slot", kind: kindOf(d) };
}

/** A slot that keeps every share by name. */
export function listSlot<T>(d: {
  id: string;
  per: Scope;
  says: string;
  empty: "refuse" | "zero";
  enter?: Slot["enter"] & {};
}): Slot<readonly Share<T>[]> {
  return { ...d, decl: "slot", combine: "list", unit: "", kind: null };
}

export interface Offer {
  readonly decl: "offer";
  readonly to: Slot<unknown>;
  readonly from: Ref<unknown>;
  readonly by?: Link;
  readonly when?: readonly When[];
}

/** Offers a figure to a slot: it lands on the nearest owner of the slot above the thing, or on the thing it names. */
export function offer<T>(to: Slot<T>, from: Ref<T>, how?: { by?: Link; when?: readonly When[] }): Offer;
export function offer<T>(to: Slot<readonly Share<T>[]>, from: Ref<T>, how?: { by?: Link; when?: readonly When[] }): Offer;
export function offer(to: Slot<unknown>, from: Ref<unknown>, how: { by?: Link; when?: readonly When[] } = {}): Offer {
  return { decl: "offer", to, from, ...how };
}
