// Ground floor: what several rooms share. It computes nothing.
import { room } from "../../kernel/room.ts";
import * as hazards from "./hazards.ts";
import * as things from "./things.ts";

export * from "./hazards.ts";
export * from "./things.ts";

export const ground = room({ name: "ground", title: "Ground", answers: "", brings: [things, hazards] });
