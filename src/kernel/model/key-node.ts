// A key of the files: what may stand under it.
import type { Input, Link } from "../figure.ts";

export interface KeyNode {
  readonly keys: Map<string, KeyNode>;
  /** Below user's names. */
  any?: KeyNode;
  /** Items of a list. */
  item?: KeyNode;
  /** A value may stand here. */
  input?: Input<unknown>;
  /** The key that a short form fills. */
  head?: string;
  /** Catalogue group that may be laid under this map. */
  like?: string;
  /** "a motor". */
  says?: string;
  /** Keys of rooms still to come: accepted when the names and quantities in them are well written. */
  lax?: boolean;
  link?: Link;
  /** Earlier names of keys, and what they are called now. */
  was?: Map<string, string>;
  /** The thing is there whenever its holder is. */
  implied?: boolean;
}

export interface Keys {
  /** Catalogue texts the rooms bring along, laid under the user's own catalogue. */
  readonly shipped: readonly string[];
  readonly shop: KeyNode;
  readonly machine: KeyNode;
  readonly catalogue: KeyNode;
}
