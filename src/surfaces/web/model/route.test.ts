// Addresses of the workbench read back what they say.
import fc from "fast-check";
import { expect, test } from "vitest";
import { hrefOf, machineOf, type Place, type Route, routeOf } from "./route.ts";

const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,12}$/).filter((n) => !["shop", "compare", "rooms", "next"].includes(n));
const place: fc.Arbitrary<Place> = fc.oneof(
  fc.constantFrom<Place>({ page: "shop" }, { page: "files" }, { page: "calculator" }),
  fc.record({ page: fc.constantFrom("margins", "compare", "rooms", "next"), machine: name }) as fc.Arbitrary<Place>,
  fc.record({ page: fc.constant("room"), machine: name, room: name }) as fc.Arbitrary<Place>,
);
const route: fc.Arbitrary<Route> = fc.record({
  place,
  working: fc.option(fc.string({ minLength: 1 })),
  options: fc.array(fc.stringMatching(/^[a-z-]+\/[a-z0-9-]+$/), { maxLength: 3 }),
  own: fc
    .dictionary(
      name.filter((n) => n !== "working" && n !== "with"),
      fc.string(),
      { maxKeys: 3 },
    )
    .map((d) => new Map(Object.entries(d))),
});

test("every address leads back to the place, the working and the options that it was made of", () => {
  fc.assert(
    fc.property(route, (r) => {
      const url = new URL(hrefOf(r), "http://desk");
      expect(routeOf(url.pathname, url.search)).toEqual(r);
    }),
  );
});

test("a link to a working keeps slashes and dots, so that it can be read aloud", () => {
  const r: Route = {
    place: { page: "room", machine: "lathe", room: "spindle" },
    working: "lathe/spindle.motor.breakdown-torque",
    options: ["lathe/reconnect-low"],
    own: new Map(),
  };
  expect(hrefOf(r)).toBe("/lathe/spindle?working=lathe/spindle.motor.breakdown-torque&with=lathe/reconnect-low");
});

test("the bare address is the shop, a machine's address its margins, and a path too deep leads nowhere", () => {
  expect(routeOf("/", "")?.place).toEqual({ page: "shop" });
  expect(routeOf("/lathe", "")?.place).toEqual({ page: "margins", machine: "lathe" });
  expect(routeOf("/shop/spindle", "")).toBeNull();
  expect(routeOf("/lathe/spindle/motor", "")).toBeNull();
  expect(machineOf({ page: "files" })).toBeNull();
});
