/** The page docs/validation-three-d.md with its plots, from the set, the fitted law and what it said of held-out cases. */
import { readFileSync, writeFileSync } from "node:fs";
import { awayFromParting } from "../../src/sim/hydraulics/loss-law/features.ts";
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
    ratioOf(cases, (each) => {
      const open = LAW[name].reach * each.deviation[name];
      const band = each.outside ? Math.max(open, LAW.outside[name]) : Math.min(WIDEST, open);
      return Math.abs(each[name]) <= band;
    }),
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

/** Why a case is over 30 %, as far as it is known. */
const NOTES: Readonly<Record<string, string>> = {
  "lt-parting-11": "keeps either of two flows, by its start",
  "ec-parting-3": "its power goes up and down between flush times",
  "lt-left-0.3":
    "the lower vein lies head-on towards the lung that gets three tenths; sparing it otherwise made others worse",
  "ec-spread-45": "as lt-left-0.3",
  "ec-spread-5": "an adult's conduit narrower than both veins, which the law puts too high",
};

/** @throws where a case over 30 % has no note: the page would say less than the fit before it */
const past = (cases: readonly Judged[]): string =>
  cases
    .filter((each) => most(each) > 0.3)
    .map(({ name }) => {
      const note = NOTES[name];
      if (!note) throw new Error(`${name} is over 30 % off: say why in NOTES`);
      return `${name} (${note})`;
    })
    .join(", ") || "none";

const most = ({ power, drop }: Judged): number => Math.max(Math.abs(part(power)), Math.abs(part(drop)));

/** Tried by hand while the law's form was chosen, judged on the twentieths by scatter and worst case; its figures are of that time. */
const TRIED = `## What was tried

Once, by hand; no command prints these figures. The law's numbers never saw the case that judges them; its form was chosen with the twentieths in view, so the eighths are the fairer row. Before the
form was changed, the law of 163 cases was judged by the 113 that were computed next, most of them where it was least sure: power within in 87 %, drop in 88 %,
shares within 0.08 in 63 %. So the 94, 94 and 82 % that twentieths of those 163 had given were too kind, many of them being close neighbours.

- Kept, each with its reason, since the relations alone came from 77 to 91 % (power) of those 113: streams near the place where they change sides lose more,
  neither having a lung of its own (\`unparted\`); a narrowing's jet costs the upper stream only what it hits of it (\`jetReach\`) and moves the place of parting
  (\`byJet\`); a lumen that narrows makes the stream even, so that it brings less than two heads; a flare leads the stream on (\`led\`).
- Kept for the shares: a jet mixes only what it hits; near the place of parting the law doesn't follow single cases (\`unsettled\`, measured from repeats).
- Not kept (no better): a place of parting that moves with either split or the streams' momentum; sparing the lower stream only what the upper one's heads
  would cost it; a Gaussian process of its own for the chamber; Matern 5/2, a rational quadratic, a linear trend, or no single-feature part instead of the
  kernel; mirrored cases (left for right) as one (the leaning veins break the mirror).`;

/** Families of which less than nine in ten are within. */
const below = ({ families }: HeldOut, name: Loss): string =>
  Object.entries(families)
    .map(([family, cases]) => [family, standing(cases).inside(name)] as const)
    .filter(([, inside]) => inside < 0.9)
    .map(([family, inside]) => `${family} (${percent(inside)})`)
    .join(", ") || "none";

/** Mean radii from the place of parting beyond which streams are apart. */
const APART = 0.3;

/** Names of the tubes' cases whose streams are apart, or not. */
const tubesThat = (apart: boolean): ReadonlySet<string> =>
  new Set(
    readSet()
      .filter((each) => isFitted(each) && each.stored.stage !== "atriopulmonary")
      .filter(({ sizes, streams }) => Math.abs(awayFromParting(sizes, streams)) > APART === apart)
      .map(({ stored }) => stored.name),
  );

export function page(held: HeldOut): string {
  const { constants, crossing, outside } = LAW;
  const all = standing(held.folds);
  const among = (names: ReadonlySet<string>) => held.folds.filter(({ name }) => names.has(name));
  const [far, near] = [true, false].map((apart) => among(tubesThat(apart))) as [Judged[], Judged[]];
  const [apart, hitting] = [standing(far), standing(near)];
  const listed = Object.entries(constants).map(([name, value]) => `${name} ${Number(value.toPrecision(3))}`);
  return `# The loss law against three dimensions

Written by \`npx tsx scripts/three-d.ts page\` (part of \`npm run validation\`); a test fails when it is not current. The law: [pathways](model-pathways.md),
section 3. The set: \`scripts/three-d/README.md\`, \`docs/validation/three-d.json\`; a loss or a drop is flux-weighted total pressure, read at
the project's own openings. Repeats on other grids or from other starts are no cases of their own. ${held.folds.length} cases with a steady parabola are fitted.

Every figure is of cases **held out** of the fit that judged them: all numbers of the law fitted again without them. "Within" is 15 % and the case's own
uncertainty; "band" is how often the law's band (never wider than 30 % inside the set) holds the 3D value; shares are the greater miss of both veins' parts to
the left lung, within 0.08, and within that and the case's own uncertainty. "Inside the set" are those that the law, fitted without them, does not
itself call outside (\`outsideSet\`: a feature beyond the span of its pathway's other cases).

| held out | cases | power within | worst | band | drop within | worst | band | share within 0.08 | with its own | worst |
|---|---|---|---|---|---|---|---|---|---|---|
${line("one case in twenty at a time", held.folds)}
${line(
  "the same, inside the set",
  held.folds.filter(({ outside }) => !outside),
)}
${line("one case in eight at a time", held.eighths)}
${line(
  "the same, inside the set",
  held.eighths.filter(({ outside }) => !outside),
)}
${line("in twenty: tubes, streams apart", far)}
${line("in twenty: tubes, near parting", near)}
${line(
  "in twenty: chambers",
  held.folds.filter(({ name }) => name.startsWith("ap-")),
)}
${Object.entries(held.families)
  .map(([name, cases]) => line(name, cases))
  .join("\n")}

![power](validation/three-d-parity-power.svg) ![drop](validation/three-d-parity-drop.svg)

## What this reaches and what not

- One case in twenty left out: power within in ${percent(all.inside("power"))}, drop in ${percent(all.inside("drop"))} of cases (asked: 90 %). The worst is ${percent(all.worst("power"))} off in power and ${percent(all.worst("drop"))}
  in drop (asked: none over 30 %); beyond 30 %:
  ${past(held.folds)}.
- Shares: ${percent(all.sharedPlain())} within 0.08 (asked: 90 %), ${percent(all.shared())} with the cases' own uncertainty. It is tubes whose streams meet within ${APART} mean radii of the
  place where they change sides that miss (${percent(hitting.sharedPlain())} of ${near.length}, ${percent(hitting.shared())} with their own): there 3D itself gives a share only to 0.1 to 0.8, as repeats from other starts
  show (\`scripts/three-d/README.md\`). Farther off ${percent(apart.sharedPlain())} of ${far.length} are within 0.08. Both veins' parts always add
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
    .join(
      ", ",
    )} (place, byJet, width, most, excess, jet, jetReach). Unsettled: ${LAW.unsettled.toPrecision(2)}.

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
