// The registry: one line a room, in the order in which they may import each other.
import { house } from "../kernel/house.ts";
import { coming } from "./coming.ts";
import { ground } from "./ground/index.ts";
import { supply } from "./supply/index.ts";
import { spindle } from "./spindle/index.ts";

export const waywright = house([ground, supply, spindle], coming);
