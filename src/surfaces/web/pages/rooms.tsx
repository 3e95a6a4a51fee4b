// rooms
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function RoomsPage(_: { machine?: string; room?: string }): JSX.Element {
  return (
    <Page crumb="" title="rooms">
      {null}
    </Page>
  );
}
