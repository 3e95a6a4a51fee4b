// Finds a browser for the page tests, or fetches one, and notes it where test/browser/served.ts reads it.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./fresh.mjs";
import { npm } from "./npm.mjs";

const note = join(root, "node_modules/.waywright-browser.json");

/** No sandbox, because root and containers have none to offer; the rest keeps the browser off the network and off a screen's drivers. */
const flags =
  "--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync".split(
    " ",
  );

const isOn = (value) => value !== undefined && value !== "" && value !== "0" && value !== "false";

if (!isNoted()) {
  const browser = (await named()) ?? (await found()) ?? (await installed()) ?? (await fetched());
  if (browser === null) missing();
  else writeFileSync(note, JSON.stringify(browser));
}

/** What was found before holds as long as it exists and nobody names another. */
function isNoted() {
  const before = existsSync(note) ? JSON.parse(readFileSync(note, "utf8")) : null;
  const wanted = process.env.WAYWRIGHT_BROWSER;
  const holds = before !== null && existsSync(before.executablePath) && (!wanted || wanted === before.executablePath);
  if (!holds) rmSync(note, { force: true });
  return holds;
}

/** The one the user names. A name that is no browser is a mistake to be told, not a reason to take another. */
async function named() {
  const program = process.env.WAYWRIGHT_BROWSER;
  if (!program) return null;
  const browser = await proven(program);
  if (browser === null) stop(`WAYWRIGHT_BROWSER is "${program}", which does not open an empty page.`);
  return browser;
}

/** One that is on the machine already. */
async function found() {
  const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge", "msedge"];
  const onPath = (process.env.PATH ?? "").split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  const { ProgramFiles, LOCALAPPDATA } = process.env;
  const usual = [
    ...["Chromium", "Google Chrome", "Microsoft Edge"].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`),
    ...[ProgramFiles, process.env["ProgramFiles(x86)"], LOCALAPPDATA]
      .filter((folder) => folder !== undefined)
      .flatMap((folder) => ["Google/Chrome", "Chromium", "Microsoft/Edge"].map((name) => join(folder, name, "Application")))
      .flatMap((folder) => ["chrome.exe", "msedge.exe"].map((name) => join(folder, name))),
  ];
  for (const program of [...onPath, ...usual]) {
    const browser = existsSync(program) ? await proven(program) : null;
    if (browser !== null) return browser;
  }
  return null;
}

/** Debian's own package, where the user may install one. */
async function installed() {
  const isDebian = existsSync("/etc/debian_version") && process.getuid?.() === 0;
  if (!isDebian || isOn(process.env.WAYWRIGHT_NO_APT)) return null;
  say("No browser for the page tests: installing Debian's chromium with apt-get (WAYWRIGHT_NO_APT=1 forbids it) ...");
  const apt = (...words) => {
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    const { status, stderr } = spawnSync("apt-get", ["-qq", ...words], { env, stdio: ["ignore", "ignore", "pipe"], encoding: "utf8" });
    if (status !== 0) say(`apt-get ${words[0]} did not work: ${(stderr ?? "").trim().split("\n").at(-1)}`);
    return status === 0;
  };
  const isDone = apt("update") && apt("install", "--yes", "--no-install-recommends", "chromium", "fonts-dejavu-core");
  return isDone ? found() : null;
}

/**
 * A browser from npm, from a lock file of its own so that only a machine in need downloads it. It was packed for a cloud's Linux:
 * only when told that it runs there does it unpack the libraries that a bare machine lacks; and it unpacks into TMPDIR.
 */
async function fetched() {
  if (process.platform !== "linux" || process.arch !== "x64") return null;
  const folder = join(root, "test/browser/chromium");
  say("No browser for the page tests: fetching one from npm (about 70 MB) ...");
  if (!npm(folder, "ci", "--loglevel=error")) return null;
  const unpacked = join(folder, "node_modules/.unpacked");
  rmSync(unpacked, { recursive: true, force: true });
  mkdirSync(unpacked, { recursive: true });
  Object.assign(process.env, { AWS_LAMBDA_JS_RUNTIME: "nodejs20.x", TMPDIR: unpacked });
  const { default: chromium } = await import(pathToFileURL(join(folder, "node_modules/@sparticuz/chromium/build/esm/index.js")).href);
  const program = await chromium.executablePath();
  const fonts = `${unpacked}/fonts`; // its own list of fonts names /tmp, where they are not
  writeFileSync(`${fonts}/fonts.conf`, fontList([`${fonts}/fonts`, "/usr/share/fonts"], `${unpacked}/font-cache`));
  return proven(program, { LD_LIBRARY_PATH: process.env.LD_LIBRARY_PATH, FONTCONFIG_PATH: fonts });
}

function fontList(folders, cache) {
  const places = folders.map((folder) => `<dir>${folder}</dir>`).join("");
  return `<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig>${places}<cachedir>${cache}</cachedir></fontconfig>\n`;
}

/** The browser, with the options that opened an empty page, else null: a name on PATH may be a stub, and a library may be missing. */
async function proven(executablePath, env = {}) {
  const { chromium } = await import("playwright-core");
  const launch = { executablePath, args: flags, env };
  try {
    const browser = await chromium.launch({ ...launch, env: { ...process.env, ...env } });
    await (await browser.newPage()).setContent("<p>empty</p>");
    await browser.close();
    return launch;
  } catch {
    return null;
  }
}

function missing() {
  const advice = "install Chromium or a browser of its family, or name one in WAYWRIGHT_BROWSER";
  if (isOn(process.env.CI)) stop(`No browser was found for the page tests: ${advice}.`);
  say(`No browser was found: the page tests will be skipped. To run them, ${advice}.`);
}

function stop(sentence) {
  say(sentence);
  process.exit(1);
}

function say(sentence) {
  process.stderr.write(`${sentence}\n`);
}
