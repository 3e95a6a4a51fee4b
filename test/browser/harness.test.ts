// The checks of every page against planted faults: each must be seen to catch what it is for, and to leave a sound page alone.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { axe, complaintsOf, desk, pageTest, phone, servePage } from "./harness.ts";
import { lookChecks } from "./look.ts";

const page = (body: string, style = ""): string => `<!doctype html><html lang="en"><head><title>Lathe</title>
<meta name="viewport" content="width=device-width"><style>body { margin: 8px; font: 16px/1.2 sans-serif } ${style}</style></head>
<body><main><h1>Lathe</h1>${body}</main></body></html>`;

/** Everything that is allowed though it looks like a fault at first sight. */
const sound = page(
  `<p>Peak draw <math><msub><mi>I</mi><mi>pk</mi></msub><mo>=</mo><mn>41</mn></math> A, 2 m<sup>3</sup>/h<br>on the next line</p>
  <p class="hidden">read aloud only</p><p hidden>not shown</p>
  <div class="list" tabindex="0"><p>one</p><p>two</p><p>three</p><p>four</p></div><p>below the list</p>
  <p class="under">scrolled under the bar</p><div class="bar">bar that floats</div>
  <svg width="360" height="60" viewBox="0 0 180 30" role="img" aria-label="two labels"><text x="10" y="20" font-size="7">drawn small, shown large</text>
  <text transform="translate(120 28) rotate(-90)" font-size="7">turned</text><text x="130" y="20" font-size="7">beside it</text></svg>`,
  `.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden } .list { height: 30px; overflow: auto } p { margin: 0 }
  .bar { position: fixed; left: 0; right: 0; bottom: 0; height: 40px; background: #fff } .under { position: fixed; bottom: 20px }`,
);

pageTest("a sound page has no fault, on the desk, on the phone, in either theme", async ({ browser }) => {
  for (const viewport of [desk, phone]) {
    for (const colorScheme of ["light", "dark"] as const) {
      const tab = await browser.newPage({ viewport, colorScheme });
      await tab.setContent(sound);
      expect(await lookChecks(tab)).toEqual([]);
      expect(await axe(tab)).toEqual([]);
      await tab.close();
    }
  }
});

pageTest.for([
  ["text of 11 px", page(`<p style="font-size: 11px">free air</p>`), [`"free air" is 11.0 px`]],
  [
    "a label that its drawing shrinks",
    page(`<svg width="150" viewBox="0 0 300 30"><text y="20" font-size="14">shaft</text></svg>`),
    [`"shaft" is 7.0 px`],
  ],
  ["an index on text too small", page(`<p><small style="font-size: 10px">m<sup>3</sup></small></p>`), [`"m" is 10.0 px`, `"3" is 10.0 px`]],
  ["a field of 10 px", page(`<input name="draw" aria-label="draw" style="font-size: 10px">`), [`the input "draw" is 10.0 px`]],
  [
    "a label over another",
    page(`<p style="height: 0; margin: 0">motor</p><p style="margin: 0">drive</p>`),
    [expect.stringMatching(/^"motor" and "drive" overlap at/)],
  ],
  [
    "a drawn label over another",
    page(`<svg width="200" height="30"><text x="0" y="20">supply</text><text x="20" y="22" pointer-events="none">drive</text></svg>`),
    [expect.stringMatching(/^"supply" and "drive" overlap at/)],
  ],
  [
    "a floating part that lets the text under it through",
    sound.replace("background: #fff", "background: #fff8"),
    [expect.stringMatching(/^"bar that floats" and "scrolled under the bar" overlap at/)],
  ],
  ["a line that does not fit", page(`<p style="width: 500px">wide</p>`), ["the page is 508 px wide in a window of 390 px"]],
] satisfies [string, string, unknown[]][])("the look of a page is refused for %s", async ([, html, faults], { browser }) => {
  const tab = await browser.newPage({ viewport: phone });
  await tab.setContent(html);
  expect(await lookChecks(tab)).toEqual(faults);
  await tab.close();
});

pageTest("an unlabelled field and a text too pale are named by their accessibility rules", async ({ browser }) => {
  const tab = await browser.newPage();
  await tab.setContent(page(`<input><p style="color: #bbb">pale</p>`));
  expect((await axe(tab)).map((fault) => fault.split(":")[0])).toEqual(["color-contrast", "label"]);
  await tab.close();
});

pageTest("what a page complains of is kept: an error on its console, an exception, a file it cannot load", async ({ browser }) => {
  const tab = await browser.newPage();
  const complaints = complaintsOf(tab);
  await tab.setContent(
    page(`<script>console.warn("no complaint"); console.error("spilt"); setTimeout(() => { throw new Error("dropped") })</script>`),
  );
  await tab.setContent(page(`<img alt="" src="http://127.0.0.1:9/none.png">`));
  await expect.poll(() => complaints).toHaveLength(3);
  expect(complaints).toEqual([expect.stringContaining("spilt"), "uncaught: dropped", expect.stringContaining("ERR_")]);
  await tab.close();
});

test("a program that ends before it serves is told with its status and its words", async () => {
  const empty = mkdtempSync(join(tmpdir(), "waywright-empty-"));
  await expect(servePage(empty)).rejects.toThrow(/ended with status 2 before it served the shop:\n./);
  rmSync(empty, { recursive: true });
});
