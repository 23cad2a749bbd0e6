// Draws docs/pictures/soak.svg from the runs stored in docs/validation; `npm run soak` makes two new ones first.
import { copyFileSync, writeFileSync } from "node:fs";
import { drawSoaks, readSoaks, soakOf, WAYS } from "./docs/soak.ts";

if (process.argv[2] === "fresh") for (const way of WAYS) copyFileSync(`.cache/soak-${way}.json`, soakOf(way));
writeFileSync("docs/pictures/soak.svg", drawSoaks(readSoaks()));
