import { describe, expect, it } from "vitest";
import { t } from "../../src/i18n/index.ts";
import { changesOf, stretchesOf } from "../../src/scenes/layers/grade-stretches.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { STAGES, type Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const solved = Object.fromEntries(
  STAGES.map((stage) => [stage, solve({ ...START.request, stage })]),
) as Record<Stage, ReturnType<typeof solve>>;
const lineOf = (stage: Stage) => solved[stage].pathway.gradeLine;
const theme = darkTheme(t);

describe("the grade line says what is there", () => {
  it.each(STAGES)("%s: stretches follow one another from the liver to the atrium", (stage) => {
    const stretches = stretchesOf(lineOf(stage));
    expect(stretches[0]!.from).toBe(0);
    expect(stretches.at(-1)!.to).toBe(1);
    stretches.slice(1).forEach(({ from }, i) => {
      expect(from).toBe(stretches[i]!.to);
    });
    for (const { key } of stretches) expect(theme.say(key)).not.toBe(key);
  });

  it("only a pathway is called one", () => {
    const called = STAGES.filter((stage) =>
      stretchesOf(lineOf(stage)).some(({ key }) => key === "scene.stretch.pathway"),
    );
    expect(called).toEqual(["atriopulmonary", "lateral-tunnel", "extracardiac"]);
    expect(stretchesOf(lineOf("glenn")).map(({ key }) => key)).toEqual([
      "scene.stretch.liver",
      "scene.stretch.lowerVein",
      "scene.stretch.atrium",
    ]);
    expect(stretchesOf(solved.glenn.pathway.upperGradeLine).map(({ key }) => key)).toEqual([
      "scene.stretch.upperVein",
      "scene.stretch.pulmonaryArteries",
      "scene.stretch.lungs",
      "scene.stretch.veins",
    ]);
  });

  it("with two ventricles the label on the rise gives what the pump adds, and the one under the fall what the lungs lose", () => {
    const line = lineOf("two-ventricle");
    const index = line.findIndex(({ at }) => at === "rightVentricle");
    const rise = line[index + 1]!.totalPressure - line[index]!.totalPressure;
    expect(rise).toBeGreaterThan(5);
    const [pump, lungs] = changesOf(solved["two-ventricle"], theme);
    expect(pump!.figure).toContain(rise.toFixed(1));
    expect(pump!.words).toContain("right ventricle");
    expect(pump!.station).toBeLessThanOrEqual(line[index]!.station);
    const bed = line.findIndex(({ at }) => at === "lungBed");
    expect(lungs!.figure).toContain((line[bed]!.pressure - line[bed + 1]!.pressure).toFixed(1));
    expect(lungs!.station).toBeGreaterThan(line[bed]!.station);
    expect(lungs!.station).toBeLessThan(line[bed + 1]!.station);
  });

  it("at the Glenn stage nothing is said to be spent on a pathway", () => {
    expect(changesOf(solved.glenn, theme)).toEqual([]);
  });
});
