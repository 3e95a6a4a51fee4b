// Which page stands at which place. Pages that are not on the first screen are loaded when they are first wanted.
import type { ComponentType, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { isLost, place } from "../model/place.ts";
import { Page } from "../shell/page.tsx";
import { LostPage } from "./lost.tsx";
import { MarginsPage } from "./margins.tsx";
import { NextPage } from "./next.tsx";
import { RoomPage } from "./room.tsx";
import { RoomsPage } from "./rooms.tsx";
import { ShopPage } from "./shop.tsx";

const loaders = {
  compare: () => import("./compare.tsx").then((m) => m.ComparePage),
  calculator: () => import("./calculator.tsx").then((m) => m.CalculatorPage),
  files: () => import("./files.tsx").then((m) => m.FilesPage),
} as const satisfies Record<string, () => Promise<ComponentType>>;

export function PlaceShown(): JSX.Element {
  if (isLost.value) return <LostPage />;
  const at = place.value;
  switch (at.page) {
    case "shop":
      return <ShopPage />;
    case "margins":
      return <MarginsPage machine={at.machine} />;
    case "room":
      return <RoomPage key={`${at.machine}/${at.room}`} machine={at.machine} room={at.room} />;
    case "rooms":
      return <RoomsPage machine={at.machine} />;
    case "next":
      return <NextPage machine={at.machine} />;
    case "compare":
    case "calculator":
    case "files":
      return <Loaded key={at.page} page={at.page} />;
  }
}

function Loaded({ page }: { page: keyof typeof loaders }): JSX.Element {
  const [Shown, setShown] = useState<ComponentType | null>(null);
  useEffect(() => {
    void loaders[page]().then((found) => setShown(() => found));
  }, [page]);
  return Shown === null ? (
    <Page crumb="" title="">
      {null}
    </Page>
  ) : (
    <Shown />
  );
}
