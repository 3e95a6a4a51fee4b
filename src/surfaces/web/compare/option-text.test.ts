// An option written by the page is read by the loader as it was meant.
import { expect, test } from "vitest";
import { asFound } from "../../../kernel/model/node.ts";
import { parseShop, resolve } from "../../../kernel/model/resolve.ts";
import { waywright } from "../../../rooms/index.ts";
import { optionFile, optionText, refusedName } from "./option-text.ts";

const shop = {
  "shop.yaml": "waywright: 1\nshop: Heron Reel Works\n",
  "lathe/machine.yaml": "machine: Lathe\nspindle: { drive: { mode: vector } }\n",
  "lathe/options/base.yaml": "option: base\nset: { spindle.drive.mode: vector }\n",
};
const values = [
  { root: "lathe", path: "spindle.highest-speed", text: "2500 rpm" },
  { root: "shop", path: "supply.voltage", text: "230 V +/- 5 %" },
  { root: "lathe", path: "spindle.drive.choke", text: "none" },
];
const fresh = {
  machine: "lathe",
  name: "trial",
  title: "Slower: a trial, # with signs",
  cost: "120 USD",
  hours: "",
  needs: ["base"],
  values,
};

test("every value arrives at its path, with title, cost and what it builds on", () => {
  const files = new Map(
    Object.entries({ ...shop, [optionFile("lathe", "trial")]: optionText(fresh) }).map(([path, text]) => [path, { text }]),
  );
  const parsed = parseShop(files, waywright.keys);
  const found = resolve(parsed, waywright.keys, asFound);
  expect(found.findings.filter((f) => f.place.file === optionFile("lathe", "trial"))).toEqual([]);
  expect(found.options.find((o) => o.name === "trial")).toMatchObject({
    title: fresh.title,
    cost: "120 USD",
    hours: null,
    needs: ["base"],
  });
  const laid = resolve(parsed, waywright.keys, {
    options: [
      { machine: "lathe", name: "base" },
      { machine: "lathe", name: "trial" },
    ],
    tries: [],
  });
  const drive = laid.roots.get("lathe")?.entries.get("spindle");
  expect(JSON.stringify([...(drive?.is === "map" ? drive.entries : [])].find(([key]) => key === "highest-speed"))).toContain("2500 rpm");
});

test("a name that no file can have, or that is taken, is refused", () => {
  expect(refusedName("longer-run", "lathe", new Set())).toBeNull();
  expect(refusedName("Longer run", "lathe", new Set())).toMatch(/lower-case/);
  expect(refusedName("", "lathe", new Set())).toMatch(/lower-case/);
  expect(refusedName("trial", "lathe", new Set(["lathe/options/trial.yaml"]))).toMatch(/already/);
});
