// Files.
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function FilesPage(): JSX.Element {
  return (
    <Page crumb="" title="Files">
      {null}
    </Page>
  );
}
