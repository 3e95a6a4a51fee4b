// next
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function NextPage(_: { machine?: string; room?: string }): JSX.Element {
  return (
    <Page crumb="" title="next">
      {null}
    </Page>
  );
}
