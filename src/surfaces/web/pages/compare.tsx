// Compare.
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function ComparePage(): JSX.Element {
  return (
    <Page crumb="" title="Compare">
      {null}
    </Page>
  );
}
