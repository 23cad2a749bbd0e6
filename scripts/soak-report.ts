// Draws docs/pictures/soak.svg from docs/validation/soak.json; with a file named, takes that run's report first: `npm run soak`.
import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { drawSoak, SOAK } from "./docs/soak.ts";

const [fresh] = process.argv.slice(2);
if (fresh) copyFileSync(fresh, SOAK);
writeFileSync("docs/pictures/soak.svg", drawSoak(JSON.parse(readFileSync(SOAK, "utf8"))));
