/**
 * The plane field beside the set in three dimensions, see scripts/plane-set/README.md.
 *   calibrate FILE PROCESSES SECONDS   finds a closure's constants, runs all cases with the best; lines are added to FILE
 *   run FILE PROCESSES EVERY CLOSURE ...   every EVERY-th case by closures such as '{"turn": 0.3}'; {} is none
 *   mix FILE PROCESSES EVERY CLOSURE ...   the same, and what mixing would do to the shares (slow)
 *   keep FILE ...                          puts lines into docs/validation/plane-set.jsonl
 *   table                                  how near the stored lines come to three dimensions
 */
import { calibrate, runAll } from "./plane-set/calibrate.ts";
import { keepLines, readLines, STORED } from "./plane-set/store.ts";
import { answerJobs } from "./plane-set/sweep.ts";
import { tableOf } from "./plane-set/table.ts";

const [verb, file, ...rest] = process.argv.slice(2);
const count = (at: number, usual: number): number => {
  const value = Number(rest[at] ?? usual);
  if (value > 0) return value;
  throw new Error(`found "${rest[at]}" after ${verb} ${file}; allowed: a number above 0`);
};
if (verb === "work") answerJobs();
else if (verb === "calibrate" && file) await calibrate(file, count(0, 2), count(1, 470));
else if ((verb === "run" || verb === "mix") && file)
  await runAll(
    file,
    { processes: count(0, 2), every: count(1, 6), mixed: verb === "mix" },
    rest.slice(2).map((text) => JSON.parse(text)),
  );
else if (verb === "keep" && file) keepLines([file, ...rest]);
else if (verb === "table") console.log(tableOf(readLines(STORED)));
else
  throw new Error(
    `found "${verb ?? ""} ${file ?? ""}"; allowed: calibrate FILE PROCESSES SECONDS, run or mix FILE PROCESSES EVERY CLOSURE ..., keep FILE ..., table`,
  );
