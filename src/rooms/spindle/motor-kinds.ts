// Motors that want a word before anything is reckoned: two speeds, wound rotors.
import { notice } from "../../kernel/check.ts";
import { motor } from "../ground/index.ts";
import { leads, motorKind, windingSpeeds } from "./motor-inputs.ts";

export const twoSpeed = notice({
  id: "spindle.motor.two-speed",
  per: motor,
  severity: "warning",
  needs: { kind: motorKind },
  when: [{ word: motorKind, is: ["two-speed"] }],
  at: motorKind,
  of: () =>
    "A two-speed winding is two ratings in one case: on a drive use one speed only, linked and protected for that speed, with the plate line of that speed, as kind induction. Never switch speeds between drive and motor while it runs.",
});
export const twoSpeedAsInduction = notice({
  id: "spindle.motor.two-speed-links",
  per: motor,
  severity: "error",
  needs: { n: windingSpeeds, n_l: leads },
  when: [{ word: motorKind, is: ["induction"] }],
  at: windingSpeeds,
  of: (x) =>
    x.n < 2
      ? null
      : x.n_l === 6
        ? "Six leads of a two-speed winding are no star and no delta: half of its coils are reversed for the second speed. Link it by its own diagram; poles change, so does torque."
        : "A winding for two speeds has a plate line for each: write that of the speed it is linked for and speeds: 1.",
});
export const woundRotor = notice({
  id: "spindle.motor.wound-rotor",
  per: motor,
  severity: "warning",
  needs: { kind: motorKind },
  when: [{ word: motorKind, is: ["wound-rotor"] }],
  at: motorKind,
  of: () =>
    "On a drive a wound rotor is shorted at its slip rings, brushes in good order or lifted on a proper shorting device, and its rotor resistors taken out; from then on it is reckoned as kind induction, design wound.",
});
