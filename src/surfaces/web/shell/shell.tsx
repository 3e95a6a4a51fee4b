// The whole page: index, the place the address names, the drawer over it, finder, phone's bar.
import type { JSX } from "preact";
import { iconSprite } from "../../../pictures/icons.ts";
import { Svg } from "../parts/svg.tsx";
import { route } from "../model/place.ts";
import { PlaceShown } from "../pages/places.tsx";
import { Bar } from "./bar.tsx";
import { Contents } from "./contents.tsx";
import { Finder } from "./finder.tsx";
import { KeepBar } from "./keep-bar.tsx";
import { Notes } from "./notes.tsx";

const sprite = iconSprite();

export function Shell(): JSX.Element {
  const { working } = route.value;
  return (
    <>
      <a class="skip" href="#page">
        To the page
      </a>
      <Svg class="sprite" text={sprite} />
      <div class={working === null ? "frame" : "frame with-drawer"}>
        <Contents />
        <PlaceShown />
      </div>
      <Notes />
      <KeepBar />
      <Bar />
      <Finder />
    </>
  );
}
