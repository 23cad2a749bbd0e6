// Solves random settings, spread evenly over all bounds, and counts what comes of them within some minutes of processor time:
// `npx tsx scripts/random-settings.ts 10000 [minutes] [seed]`.
import fc from "fast-check";
import { solve } from "../src/sim/circulation/solve.ts";
import { anyRequest, notFinite } from "../tests/sim/circulation/any-request.ts";

const given = process.argv.slice(2);
const wrong = given.find((word, i) => i > 2 || !/^[1-9]\d{0,8}$/.test(word));
if (wrong !== undefined) {
  console.error(`found ${wrong}; allowed: at most three whole numbers above 0: sets, minutes, seed`);
  process.exit(2);
}
const [asked = 1000, minutes = 60, seed = 20260101] = given.map(Number);
/** %: a larger part of the energy that went in must not be left open. */
const OPEN = 1;

const outcomes = new Map<string, number>();
const count = (outcome: string) => outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
let mostOpen = 0;
let budgetsOpen = 0;
let answers = 0;
let sets = 0;
const began = process.cpuUsage();
/** s of processor time */
const used = (): number => {
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1e6;
};
for (const request of fc.sample(anyRequest, { numRuns: asked, seed })) {
  if (used() > 60 * minutes) break;
  sets++;
  const { request: _, ...answer } = solve(request);
  if (notFinite(answer).length > 0) count(`NOT FINITE: ${notFinite(answer).slice(0, 3).join(", ")}`);
  count(answer.run.converged ? "an answer" : (answer.run.reason ?? "NO REASON"));
  if (!answer.run.converged) continue;
  answers++;
  const open = Math.abs(answer.energy.residualPercent);
  mostOpen = Math.max(mostOpen, open);
  if (open > OPEN) budgetsOpen++;
}

for (const [outcome, times] of [...outcomes].sort(([, a], [, b]) => b - a))
  console.log(`${String(times).padStart(6)}  ${((100 * times) / sets).toFixed(1)} %  ${outcome}`);
console.log(
  `energy: ${budgetsOpen} of ${answers} budgets open by more than ${OPEN} %, the most by ${mostOpen.toFixed(2)} %`,
);
console.log(
  `${sets} of ${asked} sets of seed ${seed}, ${(used() / sets).toFixed(3)} s of processor time each`,
);
