import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { sha256 } from "./sha256.ts";

// NIST, "Examples with Intermediate Values", SHA-256 (csrc.nist.gov), and FIPS 180-2 appendix B.1 to B.3.
test.each([
  ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
  ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
  ["abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"],
  ["a".repeat(1_000_000), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"],
])("the published digest of %.20s comes out to the last digit", (text, digest) => {
  expect(sha256(text)).toBe(digest);
});

test("a text of any length around the ends of one and two blocks has the digest of the platform", () => {
  for (let length = 0; length <= 130; length++) {
    const text = "x".repeat(length);
    expect(sha256(text), String(length)).toBe(platform(text));
  }
});

test("any text, with accents, symbols and halves of symbols, has the digest of the platform", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 400 }), fc.string({ maxLength: 400 }), (any, plain) => {
      expect(sha256(any)).toBe(platform(any));
      expect(sha256(plain)).toBe(platform(plain));
    }),
    { seed: 1, numRuns: 500 },
  );
  expect(sha256("\ud800 25 µm \ud83d\udd27")).toBe(platform("\ud800 25 µm \ud83d\udd27"));
});

function platform(text: string): string {
  return createHash("sha256").update(text, "utf8").digest("hex");
}
