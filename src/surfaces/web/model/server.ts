// The server as the page sees it: texts with hashes, saves, word of changes. No other request ever leaves the page.
import type { Finding } from "../../../kernel/finding.ts";

export interface DiskFile {
  readonly text: string;
  readonly hash: string;
}

export interface ShopFiles {
  /** Of the folder. */
  readonly name: string;
  readonly files: ReadonlyMap<string, DiskFile>;
  readonly findings: readonly Finding[];
}

let token: Promise<string> | null = null;

async function fetched<T>(path: string, init?: RequestInit): Promise<T> {
  const response = await fetch(path, init);
  if (!response.ok) throw new Error(`the server answered ${response.status} to ${path}`);
  return (await response.json()) as T; // our own server: its answers are typed here
}

export async function fetchShop(): Promise<ShopFiles> {
  const shop = await fetched<{ name: string; files: readonly ({ path: string } & DiskFile)[]; findings: readonly Finding[] }>("/api/shop");
  return { ...shop, files: new Map(shop.files.map(({ path, text, hash }) => [path, { text, hash }])) };
}

export type Saved =
  | { readonly is: "saved"; readonly hash: string }
  /** Somebody else wrote meanwhile; null when the file is gone. */
  | { readonly is: "conflict"; readonly disk: DiskFile | null }
  | { readonly is: "refused"; readonly says: string };

/** Keeps a text in the place of the one with this hash; null makes a new file. */
export async function save(path: string, text: string, hash: string | null): Promise<Saved> {
  token ??= fetched<{ token: string }>("/api/session").then((session) => session.token);
  const headers = { "content-type": "application/json", "x-waywright-token": await token };
  const response = await fetch("/api/save", { method: "POST", headers, body: JSON.stringify({ path, text, hash }) });
  const answer = (await response.json()) as { hash?: string; says?: string; conflict?: DiskFile | null };
  if (response.ok && answer.hash !== undefined) return { is: "saved", hash: answer.hash };
  if (response.status === 409) return { is: "conflict", disk: answer.conflict ?? null };
  return { is: "refused", says: answer.says ?? `the server answered ${response.status}` };
}

export interface Change {
  readonly path: string;
  readonly hash: string | null;
}

/** Calls `changed` with files that have another text now, and `lost` with whether the server is out of reach. */
export function listen(changed: (changes: readonly Change[]) => void, lost: (isLost: boolean) => void): void {
  const events = new EventSource("/api/events");
  events.onmessage = (event: MessageEvent<string>) => changed((JSON.parse(event.data) as { changed: readonly Change[] }).changed);
  events.onopen = () => lost(false);
  events.onerror = () => lost(true);
}
