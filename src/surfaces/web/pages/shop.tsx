// shop
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function ShopPage(_: { machine?: string; room?: string }): JSX.Element {
  return (
    <Page crumb="" title="shop">
      {null}
    </Page>
  );
}
