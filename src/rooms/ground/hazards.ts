// Dangers to people: one text each, shown at the step, on the page and on paper. Every text defers to the local code and licensed practice.
import { hazard } from "../../kernel/room.ts";

export const mains = hazard({
  id: "mains",
  name: "Mains",
  says: "Isolate, lock off, prove dead before you touch. Work on the service, converters, transformers and protection belongs to licensed practice and the local code.",
});
export const storedCharge = hazard({
  id: "stored-charge",
  name: "Stored charge",
  says: "The dc bus stays charged after isolation: wait the time on the label, then measure. A braking resistor is at bus voltage and very hot; who may open the cabinet is for the local code to say.",
});
export const rotatingSpindle = hazard({
  id: "rotating-spindle",
  name: "Rotating spindle",
  says: "First runs with the guard closed, no key in the chuck, no bar, and jaws or collet as the maker of the chuck demands; stand out of the plane of rotation. Guards and stops follow the local code, never software alone.",
});
export const lifting = hazard({
  id: "lifting",
  name: "Lifting",
  says: "A motor falls like a stone: rated tackle, hands and feet clear, a second person. Where the local code asks for a trained slinger, ask one.",
});
export const hotParts = hazard({
  id: "hot-parts",
  name: "Hot parts",
  says: "Motor cases, bearings and resistors burn skin at working temperature. Let them cool or use a probe on a handle; ventilation and guards follow the local code.",
});
export const burningChips = hazard({
  id: "burning-chips",
  name: "Burning chips",
  says: "Titanium and magnesium chips burn: class D agent (sand only if truly dry), never water; oil mist over hot chips can flash. What must stand ready is for the local fire code to say.",
});
