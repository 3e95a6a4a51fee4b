// References: what a need may name, and the words on which existence hangs.
import type { Scope } from "./item.ts";

/** What a need may name. The type parameter is what `of` receives for it. */
export interface Ref<T = number> {
  readonly id: string;
  readonly per: Scope;
  /** Never set: carries the type. */
  readonly type?: T;
  readonly decl: string;
}
export type Needs = Readonly<Record<string, Ref<unknown>>>;
export type Values<X extends Needs> = { readonly [K in keyof X]: X[K] extends Ref<infer T> ? T : never };

/** Existence hangs on words, never on numbers, so that it is the same in all samples. */
export interface When {
  /** A word; or a count, which is told apart by how it is written. */
  readonly word: Ref<string> | Ref<number>;
  readonly is: readonly string[];
}

/** The thing that another thing names: an operation its tool, a part its material. */
export interface Link {
  readonly decl: "link";
  readonly per: Scope;
  readonly key: string;
  readonly to: Scope;
  readonly says: string;
}
export function link(d: Omit<Link, "decl">): Link {
  return { ...d, decl: "link" };
}
