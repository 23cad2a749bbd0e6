/**
 * The plane field beside the set in three dimensions, see scripts/plane-set/README.md.
 *   calibrate FILE PROCESSES SECONDS   finds a closure's constants, runs all cases with the best and with none; lines are added to FILE
 *   run FILE PROCESSES EVERY CLOSURE ...   every EVERY-th case by closures such as '{"turn": 0.3}'; {} is none
 *   mix FILE PROCESSES EVERY CLOSURE ...   the same, and what mixing would do to the shares (slow)
 *   table FILE [CASES]                 how near they come, for closures that at least CASES cases were run with
 */
import { calibrate, runAll } from "./plane-set/calibrate.ts";
import { answerJobs } from "./plane-set/sweep.ts";
import { readLines, tableOf } from "./plane-set/table.ts";

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
else if (verb === "table" && file) console.log(tableOf(readLines(file), count(0, 40)));
else
  throw new Error(
    `found "${verb ?? ""} ${file ?? ""}"; allowed: calibrate FILE PROCESSES SECONDS, run or mix FILE PROCESSES EVERY CLOSURE ..., table FILE [CASES]`,
  );
