// Draws docs/pictures/architecture.svg from the imports: `npm run architecture`.
import { writeFileSync } from "node:fs";
import { drawArchitecture } from "./docs/draw-architecture.ts";
import { readArrows } from "./docs/rooms.ts";

writeFileSync("docs/pictures/architecture.svg", drawArchitecture(readArrows()));
