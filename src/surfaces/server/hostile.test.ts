import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import { sha256 } from "../../kernel/sha256.ts";
import { startServer, tokenHeader, type Serving } from "./server.ts";
import { ask, shout, type Answer, type Ask } from "./test-client.ts";

// One server for all: whatever was done to it before, it must go on refusing and serving.
const machine = "machine: lathe\n";
const secret = "the neighbour's alarm code";
const web = new Map([
  ["/index.html", { type: "text/html", body: Buffer.from("<!doctype html>") }],
  ["/assets/page.js", { type: "text/javascript", body: Buffer.from("export {};") }],
]);
let work = "";
let root = "";
let desk: Serving;
let port = "";
let start = "";
let cookie = "";
let token = "";
const logged: unknown[] = [];

beforeAll(async () => {
  for (const name of ["log", "info", "warn", "error", "debug"] as const)
    vi.spyOn(console, name).mockImplementation((...all) => logged.push(...all));
  work = mkdtempSync(join(tmpdir(), "hostile-"));
  root = join(work, "heron");
  mkdirSync(join(root, "lathe"), { recursive: true });
  mkdirSync(join(work, "outside"));
  writeFileSync(join(work, "outside/secret.yaml"), secret);
  writeFileSync(join(work, "secret.yaml"), secret);
  writeFileSync(join(root, "shop.yaml"), "waywright: 1\n");
  writeFileSync(join(root, "lathe/machine.yaml"), machine);
  writeFileSync(join(root, "secret.yaml"), secret);
  symlinkSync(join(work, "outside"), join(root, "lathe/options"));
  mkdirSync(join(root, "catalogue"));
  symlinkSync(join(work, "secret.yaml"), join(root, "catalogue/parts.yaml"));
  desk = await startServer({ root, web });
  port = new URL(desk.url).port;
  start = desk.startLink.slice(desk.url.length - 1);
  const { headers } = await ask(desk.url, start);
  cookie = (headers["set-cookie"] ?? [""])[0]?.split(";")[0] ?? "";
  token = (JSON.parse((await asked("/api/session")).text) as { token: string }).token; // its form is tried in server.test.ts
});

afterEach(async () => {
  expect((await asked("/api/shop")).status).toBe(200);
  expect(readFileSync(join(root, "lathe/machine.yaml"), "utf8")).toBe(machine);
  expect(readdirSync(work).sort()).toEqual(["heron", "outside", "secret.yaml"]);
  expect(readdirSync(join(work, "outside"))).toEqual(["secret.yaml"]);
  expect(logged).toEqual([]); // so nothing secret either
});
afterAll(async () => {
  await desk.close();
  vi.restoreAllMocks();
  rmSync(work, { recursive: true });
});

function asked(path: string, { headers, ...rest }: Ask = {}): Promise<Answer> {
  return ask(desk.url, path, { ...rest, headers: { cookie, ...headers } });
}
const rightSave = JSON.stringify({ path: "lathe/machine.yaml", text: "machine: theirs\n", hash: sha256(machine) });
function posted(body: string | Buffer, headers: Record<string, string> = {}): Promise<Answer> {
  const all = { "content-type": "application/json", [tokenHeader]: token, ...headers };
  return asked("/api/save", { method: "POST", headers: all, body });
}
function expectShut({ text, headers }: Answer): void {
  for (const word of [secret, machine.trim(), token, cookie.split("=")[1] ?? "", "doctype"]) {
    expect(text).not.toContain(word);
    expect(JSON.stringify(headers)).not.toContain(word);
  }
  expect(headers).toMatchObject({ "x-content-type-options": "nosniff", "cache-control": "no-store" });
  expect(headers["access-control-allow-origin"]).toBeUndefined();
}

test.each([
  "evil.example",
  "evil.example:PORT",
  "127.0.0.1.evil.example:PORT",
  "127.0.0.1",
  "127.0.0.1:1",
  "localhost",
  "localhost.:PORT",
  "LOCALHOST:PORT",
  "0.0.0.0:PORT",
  "[::1]:PORT",
  "2130706433:PORT",
  "evil@127.0.0.1:PORT",
])("a site whose name was pointed at this computer, here as Host %j, reads nothing even with the cookie", async (host) => {
  const answer = await asked("/api/shop", { headers: { host: host.replace("PORT", port) } });
  expect(answer.status).toBe(421);
  expectShut(answer);
});

test("two Host lines, an empty one, none, and a whole address in the request line are refused", async () => {
  const line = `Cookie: ${cookie}\r\nConnection: close\r\n\r\n`;
  expect(await shout(desk.url, `GET /api/shop HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nHost: evil.example\r\n${line}`)).toMatch(
    /^HTTP\/1.1 4(00|21) /,
  );
  expect(await shout(desk.url, `GET /api/shop HTTP/1.1\r\nHost: \r\n${line}`)).toMatch(/^HTTP\/1.1 421 /);
  expect(await shout(desk.url, `GET /api/shop HTTP/1.1\r\n${line}`)).toMatch(/^HTTP\/1.1 400 /);
  expect(await shout(desk.url, `GET /api/shop HTTP/1.0\r\n${line}`)).toMatch(/^HTTP\/1.1 421 /);
  expect(await shout(desk.url, `GET http://127.0.0.1:${port}/api/shop HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n${line}`)).toMatch(
    /^HTTP\/1.1 400 /,
  );
});

test.each([
  "http://evil.example",
  "null",
  "http://127.0.0.1:1",
  "https://127.0.0.1:PORT",
  "http://localhost:PORT",
  "http://127.0.0.1:PORT.evil.example",
  "",
])("a page of the origin %j neither reads nor saves, though the browser adds our cookie", async (origin) => {
  const headers = { origin: origin.replace("PORT", port) };
  for (const answer of [
    await asked("/api/shop", { headers }),
    await asked("/api/session", { headers }),
    await posted(rightSave, headers),
  ]) {
    expect(answer.status).toBe(403);
    expectShut(answer);
  }
});

test.each(["cross-site", "same-site", "same-origin, cross-site"])("a request that the browser calls %s is refused", async (site) => {
  const headers = { "sec-fetch-site": site };
  for (const answer of [await asked("/", { headers }), await asked("/api/shop", { headers }), await posted(rightSave, headers)]) {
    expect(answer.status).toBe(403);
    expectShut(answer);
  }
});

test("without the cookie, or with one that is nearly right, not even the page's own files are to be had", async () => {
  const [name = "", value = ""] = cookie.split("=");
  const wrong = [
    "",
    name,
    `${name}=`,
    `${name}=${value.slice(1)}`,
    `${name}=${value}x`,
    `${name}=${"é".repeat(value.length)}`,
    `other=${value}`,
  ];
  for (const given of wrong) {
    for (const path of ["/", "/assets/page.js", "/api/shop", "/api/session", "/api/file?path=shop.yaml", "/api/events", "/nothing"]) {
      const answer = await asked(path, { headers: { cookie: given } });
      expect([path, answer.status]).toEqual([path, 401]);
      expectShut(answer);
    }
    expect((await posted(rightSave, { cookie: given })).status).toBe(401);
  }
  expect((await asked("/api/shop", { headers: { cookie: `${name}=tossed; ${cookie}` } })).status).toBe(200);
});

test("a start link opens once: used, made up, cut short or of an earlier start it opens nothing", async () => {
  const other = await startServer({ root, web });
  const link = other.startLink.slice(other.url.length - 1);
  expect((await ask(other.url, link, { method: "HEAD" })).status).toBe(401); // a program that looks at links must not use it up
  expect((await ask(other.url, link, { headers: { "sec-fetch-site": "cross-site" } })).status).toBe(403);
  expect((await ask(other.url, `/lathe${link.slice(1)}`)).status).toBe(401);
  for (const wrong of [start, "/?start=", "/?start=null", link.slice(0, -1), `${link}x`, link.toLowerCase()]) {
    const answer = await ask(other.url, wrong);
    expect([wrong, answer.status]).toEqual([wrong, 401]);
    expect(answer.headers["set-cookie"]).toBeUndefined();
  }
  expect((await ask(other.url, link)).status).toBe(303);
  expect((await ask(other.url, link)).status).toBe(401);
  expect((await ask(other.url, "/api/shop", { headers: { cookie } })).status).toBe(401); // nor does the cookie of another start
  await other.close();
  const used = await asked(start); // who is in already is only sent on
  expect([used.status, used.headers.location, used.headers["set-cookie"]]).toEqual([303, "/", undefined]);
});

test.each([
  "/../secret.yaml",
  "/assets/../../secret.yaml",
  "/..%2fsecret.yaml",
  "/%2e%2e/secret.yaml",
  "/%2e%2e%2f%2e%2e%2fetc%2fpasswd",
  "/%252e%252e/secret.yaml",
  "/..%5csecret.yaml",
  "/..\\secret.yaml",
  "/assets/page.js%00.html",
  "/secret.yaml%00",
  "/%c0%ae%c0%ae/secret.yaml",
  "/%zz",
  "/%",
  "//evil.example/",
  "/./",
  "/assets/%0d%0aset-cookie:x",
])("%s is no address", async (path) => {
  const answer = await asked(path);
  expect(answer.status).toBe(400);
  expectShut(answer);
});

test.each([
  "/secret.yaml",
  "/shop.yaml",
  "/lathe/machine.yaml",
  "/assets/",
  "/assets/page.js.map",
  "/assets/none",
  "/.git/config",
  "/api/",
  "/api/none",
  "/api/shop/",
  "/constructor.js",
])("%s is not to be had: only what was built, by its exact name, and no lists of folders", async (path) => {
  const answer = await asked(path);
  expect(answer.status).toBe(404);
  expectShut(answer);
});

test.each([
  "",
  "..%2Fsecret.yaml",
  "../secret.yaml",
  "lathe/../../secret.yaml",
  "lathe%2f..%2f..%2fsecret.yaml",
  "%2Fetc%2Fpasswd",
  "..%5Csecret.yaml",
  "shop.yaml%00",
  "shop.yaml%00.yaml",
  "secret.yaml",
  "file:///etc/passwd",
  ".",
  "lathe",
  "%zz",
])("the file API reads %j for nobody", async (path) => {
  const answer = await asked(`/api/file?path=${path}`);
  expect(answer.status).toBe(404);
  expectShut(answer);
});

test("links that lead out of the shop are neither read nor listed nor written through", async () => {
  for (const path of ["lathe/options/secret.yaml", "catalogue/parts.yaml"]) {
    const answer = await asked(`/api/file?path=${path}`);
    expect(answer.status).toBe(422);
    expectShut(answer);
    for (const hash of [null, sha256(secret)]) expect((await posted(JSON.stringify({ path, text: "x\n", hash }))).status).toBe(400);
  }
  expect((await asked("/api/shop")).text).not.toMatch(new RegExp(`${secret}|secret`));
  expect(readFileSync(join(work, "secret.yaml"), "utf8")).toBe(secret);
});

test.each([
  "../made.yaml",
  "/tmp/made.yaml",
  "lathe/../../made.yaml",
  "..\\made.yaml",
  "lathe/machine.yaml\u0000",
  "made.sh",
  ".waywright/made.yaml",
  "__proto__",
])("nothing is saved as %j", async (path) => {
  expect((await posted(JSON.stringify({ path, text: "x\n", hash: null }))).status).toBe(400);
  expect(existsSync("/tmp/made.yaml")).toBe(false);
});

test("a save without the page's token, or with the cookie in its place, is refused", async () => {
  for (const wrong of ["", "x", token.slice(1), cookie.split("=")[1] ?? ""]) {
    const answer = await posted(rightSave, { [tokenHeader]: wrong });
    expect(answer.status).toBe(403);
    expectShut(answer);
  }
  const inAddress = await asked(`/api/save?${tokenHeader}=${token}`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: rightSave,
  });
  expect(inAddress.status).toBe(403);
});

test.each([
  "text/plain",
  "application/x-www-form-urlencoded",
  "multipart/form-data; boundary=x",
  "",
  "application/json+x",
  "text/plain; application/json",
])("a form of another site can send %j, which saves nothing", async (type) => {
  expect((await posted(rightSave, { "content-type": type })).status).toBe(415);
});

test("state is changed by POST alone, and every other method is told so or cut off", async () => {
  expect((await asked("/api/save")).status).toBe(405);
  for (const method of ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND"])
    for (const path of ["/", "/api/save", "/api/shop"]) expect([method, (await asked(path, { method })).status]).toEqual([method, 405]);
  expect((await asked("/api/shop", { method: "POST" })).status).toBe(405);
  expect(await shout(desk.url, `CONNECT evil.example:80 HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`)).not.toMatch(/^HTTP\/1.1 2/);
  const upgrade = `GET /api/shop HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`;
  expect(await shout(desk.url, upgrade, 500)).not.toMatch(/^HTTP\/1.1 (101|2)/);
});

const head = (more: string): string =>
  `POST /api/save HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\n${tokenHeader}: ${token}\r\nContent-Type: application/json\r\n${more}\r\n\r\n`;

test("a body above 2 MB is refused by its length, before a byte of it is read", async () => {
  expect(await shout(desk.url, head("Content-Length: 2000001"))).toMatch(/^HTTP\/1.1 413 [^]*\r\nconnection: close\r\n/);
  expect(await shout(desk.url, head("Content-Length: 99999999999999999999999999"))).toMatch(/^HTTP\/1.1 4(13|00) /);
  expect(await shout(desk.url, head("Content-Length: 2000001\r\nExpect: 100-continue"))).toMatch(/^HTTP\/1.1 413 /); // no 100 before
});

test("a client that asks first is told to go on, and its save is taken up", async () => {
  const body = "{}";
  expect(await shout(desk.url, `${head(`Content-Length: ${body.length}\r\nExpect: 100-continue\r\nConnection: close`)}${body}`)).toMatch(
    /^HTTP\/1.1 100 Continue\r\n\r\nHTTP\/1.1 400 /,
  );
});

test("a body without a length is cut off at 2 MB, however much would follow", async () => {
  const taken = await new Promise<number>((resolve) => {
    let sent = 0;
    const chunk = `10000\r\n${"x".repeat(0x10000)}\r\n`;
    const socket = connect(Number(port), "127.0.0.1", () => {
      socket.write(head("Transfer-Encoding: chunked"));
      more();
    });
    const more = (): void => {
      while (!socket.destroyed && sent < 200e6) {
        sent += 0x10000;
        if (!socket.write(chunk)) return void socket.once("drain", more);
      }
    };
    socket
      .on("data", () => undefined)
      .on("error", () => undefined)
      .on("close", () => resolve(sent));
  });
  expect(taken).toBeLessThan(50e6); // 2 MB and what the system holds between two programs
});

test.each([
  "",
  "{",
  "null",
  "[]",
  "7",
  '"text"',
  "{}",
  '{"path":"shop.yaml","text":"x"}',
  '{"path":["shop.yaml"],"text":"x","hash":null}',
  '{"path":"shop.yaml","text":{"length":1},"hash":null}',
  '{"path":"shop.yaml","text":"x","hash":"abc"}',
  '{"path":"shop.yaml","text":"x","hash":null,"force":true}',
  '{"__proto__":{"path":"shop.yaml","text":"x","hash":null}}',
  '{"__proto__":{"polluted":1},"path":"shop.yaml","text":"x","hash":null}',
  '{"constructor":{"prototype":{"polluted":1}},"path":"shop.yaml","text":"x","hash":null}',
  "[".repeat(500_000),
  Buffer.from([0x22, 0xff, 0xfe, 0x22]),
])("a body that is no save, as %.60s, is refused and leaves nothing behind", async (body) => {
  expect((await posted(body)).status).toBe(400);
  expect("polluted" in {}).toBe(false);
});

test("over-long headers, two ways to say a length, and no HTTP at all are refused by a status line", async () => {
  const long = `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX: ${"x".repeat(100_000)}\r\n\r\n`;
  expect(await shout(desk.url, long)).toMatch(/^HTTP\/1.1 431 /);
  expect(await shout(desk.url, `GET /${"a".repeat(100_000)} HTTP/1.1\r\n\r\n`)).toMatch(/^HTTP\/1.1 431 /);
  expect(
    await shout(desk.url, `${head("Content-Length: 5\r\nTransfer-Encoding: chunked")}0\r\n\r\nGET /api/shop HTTP/1.1\r\n\r\n`),
  ).toMatch(/^HTTP\/1.1 400 /);
  expect(await shout(desk.url, "\x16\x03\x01\x00\xa5\x01\x00\r\n\r\n")).toMatch(/^HTTP\/1.1 400 /);
});

test("a header that drips in for ever, and a body that stops half way, hold nothing up", async () => {
  const [dripping, half] = await Promise.all([
    shout(desk.url, `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Slow: `, 30_000),
    shout(desk.url, `${head("Content-Length: 100")}{"path"`, 200),
  ]);
  expect(dripping).toMatch(/^HTTP\/1.1 408 /);
  expect(half).toBe("");
});
