// room
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function RoomPage(_: { machine?: string; room?: string }): JSX.Element {
  return (
    <Page crumb="" title="room">
      {null}
    </Page>
  );
}
