// The frame of every page: crumb, title, tools, one sentence, and what the page itself brings.
import type { ComponentChildren, JSX } from "preact";
import { useEffect } from "preact/hooks";
import { answer, isSettled } from "../model/desk.ts";
import { route } from "../model/place.ts";
import { Drawer } from "../drawer/drawer.tsx";
import { Head } from "./head.tsx";

interface PageProps {
  readonly crumb: string;
  readonly title: string;
  /** Tools of this page, left of those that every page has. */
  readonly tools?: ComponentChildren;
  /** Answers the page's question first. */
  readonly sentence?: ComponentChildren;
  readonly class?: string;
  readonly children: ComponentChildren;
}

export function Page({ crumb, title, tools, sentence, class: name = "", children }: PageProps): JSX.Element {
  const shop = answer.value?.shop ?? "";
  const { working } = route.value;
  useEffect(() => {
    document.title = [title, crumb, shop].filter((word) => word !== "").join(" · ");
  }, [title, crumb, shop]);
  return (
    <main id="page" aria-busy={!isSettled.value}>
      <Head crumb={crumb} title={title} tools={tools} />
      <div class="desk">
        <div class="leaf">
          {sentence === undefined ? null : <p class="say">{sentence}</p>}
          <div class={`body ${name}`}>{children}</div>
        </div>
        {working === null ? null : <Drawer key="drawer" address={working} />}
      </div>
    </main>
  );
}
