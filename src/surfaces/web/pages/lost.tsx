// An address that leads nowhere.
import type { JSX } from "preact";
import { linkTo } from "../model/place.ts";
import { Page } from "../shell/page.tsx";

export function LostPage(): JSX.Element {
  return (
    <Page crumb="" title="Nothing here" sentence="This address leads to no place of the workbench.">
      <p>
        <a href={linkTo({ page: "shop" })}>To the shop</a>
      </p>
    </Page>
  );
}
