// Solves random settings, spread evenly over all bounds, and counts what comes of them within some minutes of processor time:
// `npx tsx scripts/random-settings.ts 10000 [minutes] [seed]`. A run of 10,000 or more is kept for the validation page.
import { writeFileSync } from "node:fs";
import fc from "fast-check";
import { KEPT, type RandomSettings } from "../src/cli/validation/random-section.ts";
import { solve } from "../src/sim/circulation/solve.ts";
import { anyRequest } from "../tests/sim/circulation/any-request.ts";
import { lawsBroken, oxygenOpen } from "../tests/sim/circulation/laws-broken.ts";

const given = process.argv.slice(2);
const wrong = given.find((word, i) => i > 2 || !/^[1-9]\d{0,8}$/.test(word));
if (wrong !== undefined) {
  console.error(`found ${wrong}; allowed: at most three whole numbers above 0: sets, minutes, seed`);
  process.exit(2);
}
const [asked = 1000, minutes = 60, seed = 20260101] = given.map(Number);
/** Fewer are a trial. */
const WHOLE = 10_000;

const began = process.cpuUsage();
/** s of processor time */
const used = (): number => {
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1e6;
};

const outcomes: Record<string, number> = {};
const broken: Record<string, number> = {};
const count = (into: Record<string, number>, what: string) => {
  into[what] = (into[what] ?? 0) + 1;
};
let sets = 0;
let answers = 0;
let energyOpen = 0;
let oxygen = 0;
for (const request of fc.sample(anyRequest, { numRuns: asked, seed })) {
  if (used() > 60 * minutes) break;
  sets++;
  const answer = solve(request);
  for (const law of lawsBroken(answer)) {
    count(broken, law);
    console.log(law, JSON.stringify(request));
  }
  count(outcomes, answer.run.converged ? "an answer" : (answer.run.reason ?? "no reason"));
  if (!answer.run.converged) continue;
  answers++;
  energyOpen = Math.max(energyOpen, Math.abs(answer.energy.residualPercent));
  oxygen = Math.max(oxygen, 100 * oxygenOpen(answer));
}

const result: RandomSettings = {
  sets,
  seed,
  answers,
  outcomes,
  broken,
  open: { energy: energyOpen, oxygen },
};
console.log(JSON.stringify(result, null, 2));
console.log(`${sets} of ${asked} sets, ${(used() / sets).toFixed(3)} s of processor time each`);
if (sets >= WHOLE) writeFileSync(KEPT, `${JSON.stringify(result, null, 2)}\n`);
