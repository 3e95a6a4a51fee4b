// The head of a page: crumb and title at the left; options, find, units and theme at the right.
import type { ComponentChildren, JSX } from "preact";
import { Icon } from "../parts/icon.tsx";
import { Seg } from "../parts/seg.tsx";
import { answer } from "../model/desk.ts";
import { openFind } from "../model/find-open.ts";
import { wished } from "../model/wishes.ts";
import { OptionSwitch } from "./options.tsx";

export function Head({ crumb, title, tools }: { crumb: string; title: string; tools: ComponentChildren }): JSX.Element {
  return (
    <header class="head">
      <div class="names">
        <p class="crumb">{crumb === "" ? "\u00a0" : crumb}</p>
        <h1 tabIndex={-1}>{title}</h1>
      </div>
      <div class="tools">
        {tools}
        <OptionSwitch />
        <button type="button" class="find-button" onClick={openFind} aria-keyshortcuts="/">
          Find figure, check, step <kbd aria-hidden="true">/</kbd>
        </button>
        <UnitSwitch />
        <ThemeSwitch />
      </div>
    </header>
  );
}

function UnitSwitch(): JSX.Element {
  const shown = wished.units.value ?? answer.value?.show.units ?? "metric";
  return (
    <Seg
      label="Units"
      value={shown}
      choices={[
        { value: "metric", says: "mm N·m bar", title: "Metric units" },
        { value: "inch", says: "in lbf·ft psi", title: "Inch units" },
      ]}
      choose={(units) => (wished.units.value = units)}
    />
  );
}

function ThemeSwitch(): JSX.Element {
  const { theme } = wished;
  const isDark = (): boolean => (theme.value === "system" ? matchMedia("(prefers-color-scheme: dark)").matches : theme.value === "dark");
  return (
    <button
      type="button"
      class="btn square"
      aria-label="Change between light and dark"
      title="Light or dark"
      onClick={() => (theme.value = isDark() ? "light" : "dark")}
    >
      <Icon name="theme" />
    </button>
  );
}
