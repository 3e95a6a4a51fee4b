import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { get } from "node:http";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { sha256 } from "../../kernel/sha256.ts";
import { ask, shout, type Answer, type Ask } from "./test-client.ts";
import { loadWeb, noncePlaceholder, startServer, tokenHeader, type Serving } from "./server.ts";

const machine = "machine: lathe # 25 µm\r\n";
const script = "export const page = 1;\n".repeat(200);
const index = `<!doctype html><meta property="csp-nonce" nonce="${noncePlaceholder}"><style nonce="${noncePlaceholder}"></style>`;

let work = "";
let root = "";
let desk: Serving;
let cookie = "";
let token = "";

beforeEach(async () => {
  work = mkdtempSync(join(tmpdir(), "desk-"));
  root = join(work, "heron");
  mkdirSync(join(root, "lathe/options"), { recursive: true });
  writeFileSync(join(root, "shop.yaml"), "waywright: 1\n");
  writeFileSync(join(root, "lathe/machine.yaml"), machine);
  mkdirSync(join(work, "web/assets"), { recursive: true });
  writeFileSync(join(work, "web/index.html"), index);
  writeFileSync(join(work, "web/assets/page-a1B2c3_4.js"), script);
  writeFileSync(join(work, "web/icon.svg"), "<svg/>");
  writeFileSync(join(work, "web/build.log"), "not for the page");
  desk = await startServer({ root, web: await loadWeb(join(work, "web")) });
  const { headers } = await ask(desk.url, new URL(desk.startLink).pathname + new URL(desk.startLink).search);
  cookie = (headers["set-cookie"] ?? [""])[0]?.split(";")[0] ?? "";
  token = (JSON.parse((await asked("/api/session")).text) as { token: string }).token; // the type is what this test goes on to try
});
afterEach(async () => {
  vi.useRealTimers();
  await desk.close();
  rmSync(work, { recursive: true });
});

/** As the page asks: with its cookie. */
function asked(path: string, { headers, ...rest }: Ask = {}): Promise<Answer> {
  return ask(desk.url, path, { ...rest, headers: { cookie, ...headers } });
}
function saved(body: unknown, headers: Record<string, string> = {}): Promise<Answer> {
  const all = { "content-type": "application/json", [tokenHeader]: token, ...headers };
  return asked("/api/save", { method: "POST", headers: all, body: typeof body === "string" ? body : JSON.stringify(body) });
}

test("the start link lets the browser in by a cookie that no script reads and no other site sends, and leaves no secret in the address", async () => {
  const fresh = await startServer({ root, web: await loadWeb(join(work, "web")) });
  const { status, headers } = await ask(fresh.url, fresh.startLink.slice(fresh.url.length - 1));
  expect(status).toBe(303);
  expect(headers.location).toBe("/");
  expect(headers["set-cookie"]).toEqual([expect.stringMatching(/^waywright-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/)]);
  await fresh.close();
});

test("the shop is told with every file's text and hash, a single file too", async () => {
  const { status, headers, text } = await asked("/api/shop");
  expect(status).toBe(200);
  expect(headers).toMatchObject({ "cache-control": "no-store", "content-type": "application/json", "x-content-type-options": "nosniff" });
  expect(JSON.parse(text)).toEqual({
    name: "heron",
    files: [
      { path: "lathe/machine.yaml", text: machine, hash: sha256(machine) },
      { path: "shop.yaml", text: "waywright: 1\n", hash: sha256("waywright: 1\n") },
    ],
    findings: [],
  });
  expect(JSON.parse((await asked("/api/file?path=lathe%2Fmachine.yaml")).text)).toEqual({
    path: "lathe/machine.yaml",
    text: machine,
    hash: sha256(machine),
  });
});

test("a file that cannot be read is told with its finding, one that is not there as missing", async () => {
  writeFileSync(join(root, "lathe/options/a.yaml"), Buffer.from("title: a", "utf16le"));
  expect(JSON.parse((await asked("/api/shop")).text)).toMatchObject({ findings: [{ code: "not-text" }] });
  const unread = await asked("/api/file?path=lathe/options/a.yaml");
  expect([unread.status, JSON.parse(unread.text)]).toMatchObject([422, { finding: { code: "not-text", place: { line: 1 } } }]);
  expect((await asked("/api/file?path=lathe/options/b.yaml")).status).toBe(404);
});

test("a save reaches the disk byte for byte and answers with the new hash", async () => {
  const text = "machine: lathe # 26 µm\r\n";
  const { status, text: body } = await saved({ path: "lathe/machine.yaml", text, hash: sha256(machine) });
  expect([status, JSON.parse(body)]).toEqual([200, { ok: true, hash: sha256(text) }]);
  expect(readFileSync(join(root, "lathe/machine.yaml"), "utf8")).toBe(text);
  expect((await saved({ path: "lathe/options/more-air.yaml", text: "title: More air\n", hash: null })).status).toBe(200);
});

test("a save over a file edited by hand meanwhile is a conflict that brings the text on disk", async () => {
  writeFileSync(join(root, "lathe/machine.yaml"), "machine: lathe # by hand\n");
  const { status, text } = await saved({ path: "lathe/machine.yaml", text: "machine: lathe # page\n", hash: sha256(machine) });
  const disk = { text: "machine: lathe # by hand\n", hash: sha256("machine: lathe # by hand\n") };
  expect([status, JSON.parse(text)]).toEqual([409, { conflict: disk }]);
  expect(readFileSync(join(root, "lathe/machine.yaml"), "utf8")).toBe(disk.text);
  rmSync(join(root, "lathe/machine.yaml"));
  const gone = await saved({ path: "lathe/machine.yaml", text: "x\n", hash: sha256(machine) });
  expect([gone.status, JSON.parse(gone.text)]).toEqual([409, { conflict: null }]);
});

test("every open page hears of an edit by hand and of another page's save, and is told now and then that the line stands", async () => {
  vi.useFakeTimers({ toFake: ["setInterval"] });
  const other = await startServer({ root, web: await loadWeb(join(work, "web")) });
  const entry = await ask(other.url, other.startLink.slice(other.url.length - 1));
  const heard: string[] = ["", ""];
  const lines = heard.map((_, i) =>
    get(`${other.url}api/events`, { headers: { cookie: (entry.headers["set-cookie"] ?? [""])[0]?.split(";")[0] } }, (response) => {
      expect(response.headers["content-type"]).toBe("text/event-stream");
      response.setEncoding("utf8").on("data", (text: string) => (heard[i] += text));
    }),
  );
  const wait = (wanted: string): Promise<void> =>
    vi.waitFor(() => heard.forEach((text) => expect(text).toContain(wanted)), { timeout: 10_000 });
  await wait("retry:");
  writeFileSync(join(root, "lathe/machine.yaml"), "machine: lathe # by hand\n");
  await wait(`data: ${JSON.stringify({ changed: [{ path: "lathe/machine.yaml", hash: sha256("machine: lathe # by hand\n") }] })}\n\n`);
  await saved({ path: "shop.yaml", text: "waywright: 1 # page\n", hash: sha256("waywright: 1\n") });
  await wait(`data: ${JSON.stringify({ changed: [{ path: "shop.yaml", hash: sha256("waywright: 1 # page\n") }] })}\n\n`);
  vi.advanceTimersByTime(15_000);
  await wait(": still here\n\n");
  const ended = lines.map((line) => new Promise((end) => line.on("close", end)));
  vi.useFakeTimers({ toFake: ["setTimeout"] }); // so that nothing is cut off for being late
  await other.close();
  await Promise.all(ended);
});

test("any place in the workbench answers with the page, its nonce new each time and the same in the policy", async () => {
  const nonces = new Set<string>();
  for (const path of ["/", "/lathe", "/lathe/air.hold-time", "/index.html", "/shop?verdict=fails"]) {
    const { status, headers, text } = await asked(path);
    const nonce = /<style nonce="([^"]+)">/.exec(text)?.[1] ?? "";
    expect([path, status, headers["cache-control"]]).toEqual([path, 200, "no-store"]);
    expect(headers["content-security-policy"]).toBe(
      `default-src 'none'; script-src 'self'; style-src 'self' 'nonce-${nonce}'; img-src 'self' data:; font-src 'self'; ` +
        "connect-src 'self'; worker-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'",
    );
    expect(text).not.toContain(noncePlaceholder);
    nonces.add(nonce);
  }
  expect(nonces.size).toBe(5);
});

test("an asset with a hash in its name is packed and kept for long, one without is asked for again", async () => {
  const packed = await new Promise<Buffer>((resolve) =>
    get(`${desk.url}assets/page-a1B2c3_4.js`, { headers: { cookie, "accept-encoding": "br, gzip" } }, (response) => {
      expect(response.headers).toMatchObject({ "content-encoding": "gzip", "content-type": "text/javascript; charset=utf-8" });
      expect(response.headers["cache-control"]).toContain("immutable");
      const chunks: Buffer[] = [];
      response.on("data", (chunk: Buffer) => chunks.push(chunk)).on("end", () => resolve(Buffer.concat(chunks)));
    }),
  );
  expect(packed.length).toBeLessThan(script.length / 4);
  expect(gunzipSync(packed).toString()).toBe(script);
  expect(await asked("/assets/page-a1B2c3_4.js")).toMatchObject({ status: 200, text: script });
  expect((await asked("/icon.svg")).headers).toMatchObject({ "cache-control": "no-cache", "content-type": "image/svg+xml" });
  expect(await asked("/icon.svg", { method: "HEAD" })).toMatchObject({ status: 200, text: "" });
});

test("a page that was not built, and a port that is taken, are said at the start", async () => {
  await expect(startServer({ root, web: new Map() })).rejects.toThrow("has not been built");
  const port = Number(new URL(desk.url).port);
  await expect(startServer({ root, web: await loadWeb(join(work, "web")), port })).rejects.toMatchObject({ code: "EADDRINUSE" });
});

test("the server is deaf on every address but loopback", async () => {
  const port = new URL(desk.url).port;
  const outward = Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ internal, family }) => !internal && family === "IPv4");
  for (const { address } of outward)
    await expect(ask(`http://${address}:${port}/`, "/"), address).rejects.toMatchObject({ code: "ECONNREFUSED" });
  expect(await shout(desk.url, `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: close\r\n\r\n`)).toContain("401");
});
