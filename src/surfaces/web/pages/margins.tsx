// margins
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function MarginsPage(_: { machine?: string; room?: string }): JSX.Element {
  return (
    <Page crumb="" title="margins">
      {null}
    </Page>
  );
}
