/**
 * The reference set in three dimensions.
 *   bodies FOLDER [PART OF]   writes the solver's bodies, all or every OF-th, and the list of jobs
 *   collect FILE ...          puts the solver's lines together with the cases into docs/validation/three-d.json
 *   fit                       fits the loss law to it and judges the law, see scripts/three-d/README.md
 *   page                      writes docs/validation-three-d.md
 */
import { mkdirSync } from "node:fs";
import { collect } from "./three-d/collect.ts";
import { fitToSet } from "./three-d/fit-to-set.ts";
import { writePage } from "./three-d/loss-page.ts";
import { writeBodies } from "./three-d/write-bodies.ts";

const [verb, first, ...rest] = process.argv.slice(2);
if (verb === "bodies" && first) {
  mkdirSync(first, { recursive: true });
  writeBodies(first, Number(rest[0] ?? 0), Number(rest[1] ?? 1));
} else if (verb === "collect" && first) collect([first, ...rest]);
else if (verb === "fit") fitToSet();
else if (verb === "page") writePage();
else
  throw new Error(
    `found "${verb ?? ""} ${first ?? ""}"; allowed: bodies FOLDER [PART OF], collect FILE ..., fit, page`,
  );
