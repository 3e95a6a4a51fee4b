// The workbench starts: shell first, then the shop's texts to the workers, then word of changes.
import { render } from "preact";
import "./styles/fonts.css";
import "./tokens.css";
import "./pictures.css";
import "./styles/base.css";
import "./styles/shell.css";
import { startDesk } from "./model/desk.ts";
import { startKeeping } from "./model/keep.ts";
import { startKeys } from "./model/keys.ts";
import { followLinks } from "./model/place.ts";
import { startTrials } from "./model/trials.ts";
import { startWishes } from "./model/wishes.ts";
import { Shell } from "./shell/shell.tsx";

startWishes();
startDesk();
startKeeping();
startTrials();
startKeys();
followLinks(document.body);
render(<Shell />, document.body);
