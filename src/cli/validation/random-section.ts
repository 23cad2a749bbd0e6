/** What came of random settings, as the last whole run left it. */
import { existsSync, readFileSync } from "node:fs";

export interface RandomSettings {
  readonly sets: number;
  readonly seed: number;
  /** how many of the sets have an answer */
  readonly answers: number;
  readonly outcomes: Readonly<Record<string, number>>;
  /** how many answers break a law, by law */
  readonly broken: Readonly<Record<string, number>>;
  /** %: of the energy that went in, and of the oxygen that arteries carry, left open at most by any answer */
  readonly open: { readonly energy: number; readonly oxygen: number };
}

export const KEPT = "docs/validation/random-settings.json";

/** The section of the page, in lines; none where no whole run is kept. */
export function randomSection(): readonly string[] {
  if (!existsSync(KEPT)) return [];
  const { sets, seed, answers, outcomes, broken, open } = JSON.parse(
    readFileSync(KEPT, "utf8"),
  ) as RandomSettings;
  const part = (times: number) => `${((100 * times) / sets).toFixed(1)} %`;
  const laws = Object.entries(broken);
  return [
    "",
    "## Random settings",
    "",
    `\`npx tsx scripts/random-settings.ts ${sets}\` solves sets spread evenly over all bounds (seed ${seed}; a volume of 300 mL in an adult is inside`,
    `them) and keeps what comes of them: ${answers} answers, the others refused in words. All settings at once seldom make a person.`,
    "Each answer is held against: every number finite; energy within 1 %; oxygen used against flow times arteries less veins (Fick) within",
    "0.5 % of what arteries carry; a volume that was set kept to a millionth; saturations, pressures, output and heart as in a living body.",
    `Open at most: energy ${open.energy.toFixed(2)} %, oxygen ${open.oxygen.toFixed(2)} %. ${
      laws.length === 0
        ? "None breaks one."
        : `Broken: ${laws.map(([law, times]) => `${law} (${times})`).join("; ")}.`
    }`,
    "",
    "| what comes of them | sets |",
    "|---|---|",
    ...Object.entries(outcomes)
      .sort(([, a], [, b]) => b - a)
      .map(([outcome, times]) => `| ${outcome} | ${times}, ${part(times)} |`),
  ];
}
