/** The page docs/validation-three-d.md with its plots, from the set, the fitted law and what it said of held-out cases. */
import { readFileSync, writeFileSync } from "node:fs";
import { clearance, PARTING } from "../../src/sim/hydraulics/loss-law/features.ts";
import { LAW } from "../../src/sim/hydraulics/loss-law/law-set.ts";
import { isFitted, readSet, type SetCase } from "./fit-set.ts";
import type { HeldOut } from "./fit-to-set.ts";
import type { Judged } from "./held-out.ts";
import { COLOURS, type Dot, parityPlot, residualPlot } from "./plots.ts";
import { publishedTable } from "./published.ts";

const DOCS = new URL("../../docs/", import.meta.url);
const WIDEST = Math.log(1.3);

export const readHeldOut = (): HeldOut =>
  JSON.parse(readFileSync(new URL("validation/loss-law-held-out.json", DOCS), "utf8")) as HeldOut;

type Loss = "power" | "drop";
const part = (logarithm: number): number => Math.exp(logarithm) - 1;
const percent = (value: number): string => `${Math.round(100 * value)} %`;
const signed = (value: number): string => `${value >= 0 ? "+" : "-"}${Math.abs(Math.round(100 * value))} %`;
const ratioOf = (cases: readonly Judged[], holds: (each: Judged) => boolean): number =>
  cases.filter(holds).length / cases.length;

/** What the bars ask of held-out cases. */
export const standing = (cases: readonly Judged[]) => ({
  inside: (name: Loss) => ratioOf(cases, (each) => Math.abs(part(each[name])) <= 0.15 + each.own[name]),
  worst: (name: Loss) => Math.max(...cases.map((each) => Math.abs(part(each[name])))),
  banded: (name: Loss) =>
    ratioOf(
      cases,
      (each) => Math.abs(each[name]) <= Math.min(WIDEST, LAW[name].reach * each.deviation[name]),
    ),
  shared: () => ratioOf(cases, (each) => Math.abs(each.share) <= 0.08 + each.own.share),
  sharedPlain: () => ratioOf(cases, (each) => Math.abs(each.share) <= 0.08),
  worstShare: () => Math.max(...cases.map((each) => Math.abs(each.share))),
});

function line(name: string, cases: readonly Judged[]): string {
  const { inside, worst, banded, shared, sharedPlain, worstShare } = standing(cases);
  const loss = (each: Loss) =>
    `${percent(inside(each))} | ${percent(worst(each))} | ${percent(banded(each))}`;
  return `| ${name} | ${cases.length} | ${loss("power")} | ${loss("drop")} | ${percent(sharedPlain())} | ${percent(shared())} | ${worstShare().toFixed(2)} |`;
}

const QUANTITIES: readonly (readonly [key: string, words: string, of: (each: SetCase) => number])[] = [
  ["offset", "caval offset, mm", ({ sizes }) => sizes.offset],
  ["diameter", "conduit, tunnel or chamber, mm", ({ sizes }) => sizes.trunk],
  ["flare", "flare of the joint, mm", ({ sizes }) => sizes.flare],
  ["narrowing", "narrowing of conduit or tunnel, part of its diameter", ({ sizes }) => sizes.narrowing],
  [
    "branch-stenosis",
    "the more narrowed pulmonary artery, part of its diameter",
    ({ sizes }) => Math.max(sizes.leftStenosis, sizes.rightStenosis),
  ],
  ["left-share", "share to the left lung", ({ streams }) => streams.left],
  ["lower-share", "share from the lower vein", ({ streams }) => streams.lower],
  ["index", "flow index, L/min/m2", ({ stored }) => stored.index],
  ["body", "body surface area, m2", ({ stored }) => stored.body.bsa],
];

export function writePage(): void {
  const held = readHeldOut();
  const cases = readSet().filter(isFitted);
  const coloured = (
    x: (each: SetCase, judged: Judged) => number,
    y: (each: SetCase, judged: Judged) => number,
  ) =>
    cases.map((each, n): Dot => {
      const judged = held.folds[n]!;
      return { x: x(each, judged), y: y(each, judged), colour: COLOURS[each.stored.stage] };
    });
  const put = (name: string, text: string) => writeFileSync(new URL(name, DOCS), text);
  for (const [name, unit, low, high] of [
    ["power", "mW", 0.4, 130],
    ["drop", "mmHg", 0.08, 10],
  ] as const) {
    const measured = (each: SetCase) => each.stored[name].value;
    put(
      `validation/three-d-parity-${name}.svg`,
      parityPlot(
        `${name}, ${unit}: law over 3D (conduit blue, tunnel ochre, chamber green)`,
        coloured(measured, (each, judged) => measured(each) * Math.exp(judged[name])),
        low,
        high,
      ),
    );
  }
  for (const [key, words, of] of QUANTITIES)
    put(
      `validation/three-d-residual-${key}.svg`,
      residualPlot(
        "drop: law less 3D, held-out cases",
        coloured(of, (_each, judged) => part(judged.drop)),
        words,
      ),
    );
  put("validation-three-d.md", page(held));
}

const worstTen = ({ folds }: HeldOut): string =>
  [...folds]
    .sort((one, other) => most(other) - most(one))
    .slice(0, 10)
    .map(
      ({ name, power, drop, share, own }) =>
        `| ${name} | ${signed(part(power))} | ${signed(part(drop))} | ${share.toFixed(2)} | ${percent(own.power)}, ${percent(own.drop)}, ${own.share.toFixed(2)} |`,
    )
    .join("\n");

const beyond = (cases: readonly Judged[]): string =>
  cases
    .filter((each) => most(each) > 0.3)
    .map(({ name }) => name)
    .join(", ") || "none";

const most = ({ power, drop }: Judged): number => Math.max(Math.abs(part(power)), Math.abs(part(drop)));

/** Tried by hand while the law's form was chosen, judged on the twentieths by scatter and worst case. */
const TRIED = `## What was tried

The law's numbers never saw the case that judges them; its form was chosen with the twentieths in view, so the eighths are the fairer row.

- Kept, since scatter and worst case became smaller: three numbers more in the relations (\`spared\`, \`outlet\`, \`jetFacing\`). Kept, since more cases
  are within: the interpolation's offset stretched about the place where the streams change sides (the worst case became worse).
- Left out, since both became smaller without: the lungs' narrowings among the interpolation's lengths; an allowance for a tunnel's stream that has
  not yet followed its taper.
- Not kept: Matern 5/2, a rational quadratic, a linear trend, or no single-feature part instead of the kernel (no better); mirrored cases (left
  for right) as one (worse: the leaning veins break the mirror). For the shares: a place of parting that moves
  with either split or the streams' momentum, fewer features, more noise (81 to 83 % within 0.08, as now).`;

/** Families of which less than nine in ten are within. */
const below = ({ families }: HeldOut, name: Loss): string =>
  Object.entries(families)
    .map(([family, cases]) => [family, standing(cases).inside(name)] as const)
    .filter(([, inside]) => inside < 0.9)
    .map(([family, inside]) => `${family} (${percent(inside)})`)
    .join(", ") || "none";

/** Names of the tubes' cases whose streams are clearly apart. */
const apartNames = (): ReadonlySet<string> =>
  new Set(
    readSet()
      .filter((each) => isFitted(each) && each.stored.stage !== "atriopulmonary")
      .filter(({ sizes }) => Math.abs(clearance(sizes, 0) - PARTING.place) > 1)
      .map(({ stored }) => stored.name),
  );

export function page(held: HeldOut): string {
  const { constants, crossing, outside } = LAW;
  const all = standing(held.folds);
  const tubes = standing(held.folds.filter(({ name }) => !name.startsWith("ap-")));
  const far = apartNames();
  const apart = standing(held.folds.filter(({ name }) => far.has(name)));
  const listed = Object.entries(constants).map(([name, value]) => `${name} ${Number(value.toPrecision(3))}`);
  return `# The loss law against three dimensions

Written by \`npx tsx scripts/three-d.ts page\` (part of \`npm run validation\`); a test fails when it is not current. The law: [pathways](model-pathways.md),
section 3. The set: \`scripts/three-d/README.md\`, \`docs/validation/three-d.json\`; a loss or a drop is flux-weighted total pressure, read at
the project's own openings. Repeats on other grids are no cases of their own. ${held.folds.length} cases with a steady parabola are fitted.

Every figure is of cases **held out** of the fit that judged them: all numbers of the law fitted again without them. "Within" is 15 % and the case's own
uncertainty; "band" is how often the law's band (never wider than 30 %) holds the 3D value; shares are the greater miss of both veins' parts to
the left lung, within 0.08, and within that and the case's own uncertainty.

| held out | cases | power within | worst | band | drop within | worst | band | share within 0.08 | with its own | worst |
|---|---|---|---|---|---|---|---|---|---|---|
${line("one case in twenty at a time", held.folds)}
${line("one case in eight at a time", held.eighths)}
${Object.entries(held.families)
  .map(([name, cases]) => line(name, cases))
  .join("\n")}

![power](validation/three-d-parity-power.svg) ![drop](validation/three-d-parity-drop.svg)

## What this reaches and what not

- One case in twenty left out: power within in ${percent(all.inside("power"))}, drop in ${percent(all.inside("drop"))} of cases (asked: 90 %). The worst is ${percent(all.worst("power"))} off in power and ${percent(all.worst("drop"))}
  in drop (asked: none over 30 %); beyond 30 %: ${beyond(held.folds)}. lt-spread-3, a tunnel a quarter
  narrower than its vein at high flow, is charged by the relations with 1.5 to 2 mmHg too much where the streams meet.
- Shares: ${percent(all.sharedPlain())} within 0.08 (asked: 90 %), ${percent(all.shared())} with the cases' own uncertainty. A chamber's streams drift slowly, so that its cases are themselves only known to
  0.08: tubes alone ${percent(tubes.sharedPlain())}; tubes whose
  streams are over a mean radius from where they change sides ${percent(apart.sharedPlain())} (${far.size} cases). Head-on streams with a narrowing's jet through them turn one way or the other with little cause. Both veins' parts always add
  up to each lung's flow: what is fitted is the place between the least and the most that the flows allow.
- Whole families left out ask the law to go on where no case like them was seen. Below 90 % are, in power: ${below(held, "power")}; in drop:
  ${below(held, "drop")}. There a band fitted to interpolation often holds less than nine cases in ten. The band outside the set is therefore never narrower than what the relations alone miss
  when a family is left out: ${percent(part(outside.power))} of power, ${percent(part(outside.drop))} of drop, ${outside.share.toFixed(2)} of a share.

${TRIED}

## Worst ten of the held-out cases

| case | power | drop | share | own uncertainty: power, drop, share |
|---|---|---|---|---|
${worstTen(held)}

## Checks that are no part of the fit

A flat inflow brings one head, a parabola two; a pulsating flow loses more than its mean does, which the law leaves to the circulation (it
sums the relations over the cycle). So these lie where they should, not on the line.

| case | power | drop | share |
|---|---|---|---|
${held.checks.map(({ name, power, drop, share }) => `| ${name} | ${signed(part(power))} | ${signed(part(drop))} | ${share.toFixed(2)} |`).join("\n")}

## Beside published work

Ratios and trends, since their geometry is not known fully; the same series are tests (\`tests/published/pathway-series.test.ts\`).

| series | theirs | ours | why |
|---|---|---|---|
${publishedTable()}

## Drop over each parameter

${QUANTITIES.map(([key, words]) => `![${words}](validation/three-d-residual-${key}.svg)`).join("\n")}

## The fitted numbers

Relations: ${listed.join(", ")}. Crossing: tubes ${Object.values(crossing.tubes)
    .map((value) => value.toPrecision(3))
    .join(", ")}; chamber ${Object.values(crossing.chamber)
    .map((value) => value.toPrecision(3))
    .join(", ")} (place, width, most, excess, jet).

## Limits

Rigid walls; Newtonian blood; steady flow; a body symmetric about the drawn plane (no swirl of a curved conduit, no artery behind the vein);
pulmonary arteries end at the first branch, so what a narrowed artery's jet loses beyond its opening is not counted; flows prescribed, not shared out by
the lungs. Grid error about 2 % at 34 cells across, 3 to 6 % at 28 to 25, not corrected for. None of it is a measurement in a person.

A contracting chamber (\`outsideSet: "pulsation"\`): steady cases and flows that swing by 0.3 to 0.4 of their mean are all that was computed: up to
1.24 times the steady power by the law, 1.10 to 1.30 times in 3D. Where a pathway's flow pulses so that it loses over 1.4 times what the same mean flows would, as when an atriopulmonary
chamber contracts, no case stands behind the number: the law still sums its relations over the cycle, the answer names "pulsation", and its band is
the wide one of everything outside the set. Moving walls, and blood that runs backwards into a vein, are in none of the cases.
`;
}
