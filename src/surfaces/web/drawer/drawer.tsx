// The working drawer.
import type { JSX } from "preact";

export function Drawer({ address }: { address: string }): JSX.Element {
  return <aside class="drawer" aria-label="Working">{address}</aside>;
}
