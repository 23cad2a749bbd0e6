// Solves random settings, spread evenly over all bounds, and counts what comes of them: `npx tsx scripts/random-settings.ts 10000 [seed]`.
import fc from "fast-check";
import { solve } from "../src/sim/circulation/solve.ts";
import { anyRequest, notFinite } from "../tests/sim/circulation/any-request.ts";

const [sets = 1000, seed = 20260101] = process.argv.slice(2).map(Number);
/** %: a larger part of the energy that went in must not be left open. */
const OPEN = 1;

const outcomes = new Map<string, number>();
const count = (outcome: string) => outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
let mostOpen = 0;
let budgetsOpen = 0;
let answers = 0;
const began = process.cpuUsage();
for (const request of fc.sample(anyRequest, { numRuns: sets, seed })) {
  const { request: _, ...answer } = solve(request);
  if (notFinite(answer).length > 0) count(`NOT FINITE: ${notFinite(answer).slice(0, 3).join(", ")}`);
  count(answer.run.converged ? "an answer" : (answer.run.reason ?? "NO REASON"));
  if (!answer.run.converged) continue;
  answers++;
  const open = Math.abs(answer.energy.residualPercent);
  mostOpen = Math.max(mostOpen, open);
  if (open > OPEN) budgetsOpen++;
}
const { user, system } = process.cpuUsage(began);

for (const [outcome, times] of [...outcomes].sort(([, a], [, b]) => b - a))
  console.log(`${String(times).padStart(6)}  ${((100 * times) / sets).toFixed(1)} %  ${outcome}`);
console.log(
  `energy: ${budgetsOpen} of ${answers} budgets open by more than ${OPEN} %, the most by ${mostOpen.toFixed(2)} %`,
);
console.log(`${((user + system) / 1e6 / sets).toFixed(3)} s of processor time each`);
