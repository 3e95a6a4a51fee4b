// How sources become what runs: the page for a browser, everything else for Node.
import { root } from "./fresh.mjs";

/** The oldest language of the browsers and of the Node in package.json that the built files are written in. */
const pageTarget = "es2022";
const nodeTarget = "node20";

const common = { configFile: false, logLevel: "warn", oxc: { jsx: { runtime: "automatic", importSource: "preact" } } };

/** The page at `index.html` of a folder. The server's content policy allows no inline script and no data: font, so nothing is inlined. */
export function forPage(folder, outDir) {
  return {
    ...common,
    root: folder,
    worker: { format: "es" },
    build: { target: pageTarget, outDir, emptyOutDir: true, assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  };
}

/** Programs for Node, each named by its key in `input`. Everything is bundled, so a user installs no packages and a start reads few files. */
export function forNode(input, outDir) {
  return {
    ...common,
    root,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      target: nodeTarget,
      outDir,
      emptyOutDir: true,
      rollupOptions: { input, output: { entryFileNames: "[name].mjs", chunkFileNames: "[name]-[hash].mjs" } },
    },
  };
}
