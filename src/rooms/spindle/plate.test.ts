import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "./circuits.test-help.ts";
import { CODE_LETTERS, codeLetter, isCodeLetter, lockedCurrent, lockedPower, readPlate, type Stamped } from "./plate.ts";
import { isRefusal } from "./refusal.ts";

fc.configureGlobal({ seed: 1 });

const rpm = Math.PI / 30;
const HP = 745.7;
const lathe: Stamped = { P: 7.5 * HP, V: [230, 460], I: [20.4, 10.2], f: 60, w: 1745 * rpm };

function read(plate: Stamped) {
  const reading = readPlate(plate);
  if (isRefusal(reading)) throw new Error(reading.refused);
  return reading;
}

function refusal(plate: Stamped): string | null {
  const reading = readPlate(plate);
  return isRefusal(reading) ? reading.code : null;
}

describe("a plate of 7.5 hp, 230/460 V, 20.4/10.2 A, 60 Hz, 1745 rpm", () => {
  test("is a 4-pole motor of 30.6 N m, 3.1 % slip, efficiency times power factor 0.688", () => {
    const reading = read(lathe);
    expect(reading.poles).toBe(4);
    expectNear(reading.T_n, 30.6, 2e-3);
    expectNear(reading.s, 55 / 1800, 1e-9);
    for (const x of reading.x) expectNear(x, 0.688, 1e-3);
    expect(reading.notes).toEqual([]);
  });

  test("with the current of the other voltage is refused, and told where that current belongs", () => {
    const wrong = readPlate({ ...lathe, V: [230], I: [10.2] });
    expect(wrong).toMatchObject({ code: "plate-contradiction" });
    // 1.38 and 460 V are the numbers a person needs to see.
    expect(isRefusal(wrong) && wrong.refused).toMatch(/1\.38.*460 V/);
  });

  test("with its pairs in opposite order is refused by the pair that cannot be", () => {
    expect(refusal({ ...lathe, I: [10.2, 20.4] })).toBe("plate-contradiction");
    expect(refusal({ ...lathe, I: [20.4] })).toBe("plate-pairs");
  });

  test("with input power for output, or a current too high, is noted", () => {
    expect(read({ ...lathe, V: [460], I: [16.2] }).notes.map((note) => note.code)).toEqual(["plate-low-x"]);
  });

  test("with a number left out is refused", () => {
    expect(refusal({ ...lathe, w: 0 })).toBe("plate-incomplete");
    expect(refusal({ ...lathe, V: [], I: [] })).toBe("plate-incomplete");
    expect(refusal({ ...lathe, P: NaN })).toBe("plate-incomplete");
  });
});

test.each([
  [60, 3450, 2],
  [60, 1745, 4],
  [60, 1160, 6],
  [60, 860, 8],
  [50, 2850, 2],
  [50, 1425, 4],
  [50, 950, 6],
  [50, 700, 8],
])("a motor for %i Hz that turns at %i rpm has %i poles", (f, n, poles) => {
  expect(read({ ...lathe, f, w: n * rpm }).poles).toBe(poles);
});

test("speeds an induction motor cannot have are refused", () => {
  expect(refusal({ ...lathe, w: 1800 * rpm })).toBe("plate-slip");
  expect(refusal({ ...lathe, w: 3600 * rpm })).toBe("plate-slip");
  expect(refusal({ ...lathe, w: 3700 * rpm })).toBe("plate-speed");
  expect(refusal({ ...lathe, w: 2700 * rpm })).toBe("plate-slip");
  // A 50 Hz speed against 60 Hz.
  expect(refusal({ ...lathe, w: 1425 * rpm })).toBe("plate-slip");
  // High-slip motors exist, and are odd.
  expect(read({ ...lathe, w: 1600 * rpm }).notes.map((note) => note.code)).toEqual(["plate-high-slip"]);
});

describe("code letters", () => {
  test("J of 5 hp at 230 V is 89 to 100 A with the rotor locked", () => {
    const { low, high } = lockedPower("J");
    expectNear(lockedCurrent(low, 5 * HP, 230), 89.11, 1e-3);
    expectNear(lockedCurrent(high, 5 * HP, 230), 100.41, 1e-3);
  });

  test("begin where NEMA MG 1 10.37.2 lets them begin, in kVA per horsepower", () => {
    const begins = CODE_LETTERS.map((letter) => Math.round(lockedPower(letter).low * 0.7457 * 100) / 100);
    expect(CODE_LETTERS.join("")).toBe("ABCDEFGHJKLMNPRSTUV");
    expect(begins).toEqual([0, 3.15, 3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11.2, 12.5, 14, 16, 18, 20, 22.4]);
  });

  test("meet without a gap, and 3.14 is A where 3.15 is B", () => {
    for (const [k, letter] of CODE_LETTERS.slice(1).entries()) {
      const before = CODE_LETTERS[k];
      expect(before !== undefined && lockedPower(before).high).toBe(lockedPower(letter).low);
      expect(codeLetter(lockedPower(letter).low * (1 + 1e-12))).toBe(letter);
    }
    expect(codeLetter(3140 / HP)).toBe("A");
    expect(codeLetter(3150.001 / HP)).toBe("B");
    expect(codeLetter(99_000 / HP)).toBe("V");
  });

  test("leave out I, O and Q, which are read as digits", () => {
    expect(["I", "O", "Q", "W", "b", ""].filter(isCodeLetter)).toEqual([]);
    expect(CODE_LETTERS.every(isCodeLetter)).toBe(true);
  });
});

test("poles and slip always give the plate's speed back", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(50, 60),
      fc.integer({ min: 1, max: 6 }),
      fc.double({ min: 0.002, max: 0.13, noNaN: true }),
      (f, pairs, s) => {
        const w = ((2 * Math.PI * f) / pairs) * (1 - s);
        const reading = readPlate({ ...lathe, f, w });
        fc.pre(!isRefusal(reading) && reading.poles === 2 * pairs);
        if (isRefusal(reading)) return;
        expectNear(reading.w_s * (1 - reading.s), w, 1e-12);
        expectNear(reading.s, s, 1e-9);
      },
    ),
  );
});
