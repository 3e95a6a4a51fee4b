// Values tried out as the address of the compare page holds them.

export interface TriedValue {
  readonly address: string;
  readonly text: string;
  /** Over which the slider runs, as typed; null while nobody typed one. */
  readonly range: string | null;
}

const value = "try.";
const range = "range.";

export function readTried(own: ReadonlyMap<string, string>): TriedValue[] {
  return [...own].flatMap(([key, text]) => {
    const address = key.slice(value.length);
    return key.startsWith(value) ? [{ address, text, range: own.get(range + address) ?? null }] : [];
  });
}

export function writtenTried(own: ReadonlyMap<string, string>, values: readonly TriedValue[]): Map<string, string> {
  const rest = [...own].filter(([key]) => !key.startsWith(value) && !key.startsWith(range));
  const tried = values.flatMap((v): [string, string][] => [
    [value + v.address, v.text],
    ...(v.range === null ? [] : [[range + v.address, v.range] as [string, string]]),
  ]);
  return new Map([...rest, ...tried]);
}
