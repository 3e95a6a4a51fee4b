// Imports flow one way: reads every import in src and names each that points up, sideways, behind a room's back, to Node, or in a circle.
// `node scripts/layers.mjs [folder with a src in it]`; exit status 1 when one is found.
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import { builtinModules } from "node:module";
import { join, posix, resolve } from "node:path";
import { Visitor, parseSync } from "vite";
import { root } from "./fresh.mjs";

/** Each layer, the layers it may read besides itself, and whether it runs in the browser too and so may not touch Node. */
const layers = {
  kernel: { reads: [], pure: true },
  solve: { reads: ["kernel"], pure: true },
  timeline: { reads: ["kernel"], pure: true },
  prove: { reads: ["kernel"], pure: true },
  pictures: { reads: ["kernel"], pure: true },
  files: { reads: ["kernel"], pure: false },
  rooms: { reads: ["kernel", "solve", "timeline", "prove", "pictures"], pure: true },
  surfaces: { reads: ["kernel", "solve", "timeline", "prove", "pictures", "files", "rooms"], pure: false },
  library: { reads: ["kernel", "solve", "timeline", "prove", "pictures", "rooms"], pure: true }, // the files that lie in src itself
};

/** The page is a surface that runs in the browser, so it may read nothing that needs Node either. */
const needsNode = /^(files|surfaces\/(cli|server|pack))\//;

const registry = "rooms/index.ts";
const ground = "rooms/ground/";

const isTest = (file) => /\.test\.tsx?$/.test(file);
const isPage = (file) => file.startsWith("surfaces/web/");
const isNode = (specifier) => specifier.startsWith("node:") || builtinModules.includes(specifier);
const layerOf = (file) => (file.includes("/") ? file.slice(0, file.indexOf("/")) : "library");
const roomOf = (file) => /^rooms\/([^/]+)\//.exec(file)?.[1] ?? null;

const src = join(resolve(process.argv[2] ?? root), "src");
const files = (existsSync(src) ? readdirSync(src, { recursive: true }) : [])
  .map((name) => name.replaceAll("\\", "/"))
  .filter((name) => /\.(ts|tsx|mts|js|jsx|mjs)$/.test(name) && statSync(join(src, name)).isFile())
  .sort((a, b) => (a < b ? -1 : 1));
const imports = new Map(files.map((file) => [file, importsOf(file)]));
const roomOrder = (imports.get(registry) ?? []).flatMap(({ to }) => (to === null ? [] : (roomOf(to) ?? [])));

const faults = [];
if (files.length === 0) faults.push(`no source file was read in ${src}`);
for (const [file, found] of imports) {
  for (const { specifier, to, line } of found) {
    const fault = to === null ? packageFault(file, specifier) : (layerFault(file, to) ?? roomFault(file, to));
    const target = to === null ? (specifier ?? "something computed") : posix.join("src", to);
    if (fault !== null) faults.push(`src/${file}:${line} imports ${target}: ${fault}`);
  }
}
for (const circle of circles()) faults.push(`circle: ${circle.map((file) => `src/${file}`).join(" -> ")}`);

for (const fault of faults) console.error(fault);
if (faults.length > 0) process.exitCode = 1;
else console.log(`layers: ${files.length} files, ${[...imports.values()].flat().length} imports, all one way`);

/** Every import of a file, type imports and worker addresses too; `to` is a path in src, or null for a package. */
function importsOf(file) {
  const text = readFileSync(join(src, file), "utf8");
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`src/${file} cannot be read: ${errors[0].message}`);
  const found = [];
  const note = (source) => {
    if (source === null) return;
    const line = text.slice(0, source.start).split("\n").length;
    const specifier = typeof source.value === "string" ? source.value.replace(/\?.*$/, "") : null;
    const to = specifier?.startsWith(".") ? posix.join(posix.dirname(file), specifier) : null;
    found.push({ specifier, to, line });
  };
  new Visitor({
    ImportDeclaration: (node) => note(node.source),
    ExportNamedDeclaration: (node) => note(node.source),
    ExportAllDeclaration: (node) => note(node.source),
    ImportExpression: (node) => note(node.source),
    TSImportType: (node) => note(node.source),
    NewExpression: (node) => {
      const [address, base] = node.arguments;
      if (node.callee.name === "URL" && base?.type === "MemberExpression" && base.object.type === "MetaProperty") note(address);
    },
  }).visit(program);
  return found;
}

function packageFault(file, specifier) {
  if (specifier === null) return "only an address written out can be checked";
  if (!isNode(specifier) || isTest(file)) return null;
  if (isPage(file)) return "the page runs in a browser, where there is no Node";
  return layers[layerOf(file)]?.pure ? `${layerOf(file)} runs in the browser too, where there is no Node` : null;
}

function layerFault(file, to) {
  const [from, target] = [layerOf(file), layerOf(to)];
  if (!(from in layers)) return `${from} is no layer`;
  if (!existsSync(join(src, to))) return "no such file (an address carries its ending)";
  if (to.startsWith("../")) return isTest(file) || from === "surfaces" ? null : "outside src";
  if (isPage(file) && needsNode.test(to)) return "the page runs in a browser, where there is no Node";
  return from === target || layers[from].reads.includes(target) ? null : `${from} may not read ${target}`;
}

function roomFault(file, to) {
  const [from, room] = [roomOf(file), roomOf(to)];
  if (to === registry && from !== null) return "a room does not know the registry";
  if (room === null || room === from || to.startsWith(ground)) return null;
  if (to !== `rooms/${room}/index.ts`) return "a room is read through its index.ts only";
  if (from === null) return null;
  const [mine, other] = [roomOrder.indexOf(from), roomOrder.indexOf(room)];
  if (mine === -1 || other === -1) return `${mine === -1 ? from : room} does not stand in src/${registry}`;
  return other < mine ? null : `${room} stands after ${from} in src/${registry}`;
}

/** Each group of files that reach each other, as one round trip. */
function circles() {
  const done = new Set();
  const trail = [];
  const found = [];
  const walk = (file) => {
    const at = trail.indexOf(file);
    if (at !== -1) found.push([...trail.slice(at), file]);
    if (at !== -1 || done.has(file)) return;
    trail.push(file);
    for (const { to } of imports.get(file) ?? []) if (to !== null) walk(to);
    trail.pop();
    done.add(file);
  };
  for (const file of files) walk(file);
  return found;
}
