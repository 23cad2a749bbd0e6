import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { hasMessage } from "../../src/i18n/index.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { PARAMETERS } from "../../src/sim/parameters/parameters.ts";
import { CASES, STAGES, VOLUME_RULES } from "../../src/sim/parameters/request.ts";
import { COLOURINGS, OVERLAYS, SCENES } from "../../src/state/scene-state.ts";
import { CAUTIONS } from "../../src/ui/cautions.tsx";
import { FURTHER_GROUPS } from "../../src/ui/parameter-groups.ts";

const missing = (keys: readonly string[]) => keys.filter((key) => !hasMessage(key));
const TOP = new URL("../../src", import.meta.url).pathname;

const sources = readdirSync(TOP, { recursive: true, encoding: "utf8" })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => readFileSync(join(TOP, name), "utf8"));

const en = Object.assign(
  {},
  ...readdirSync(join(TOP, "i18n/en")).map((name) =>
    JSON.parse(readFileSync(join(TOP, "i18n/en", name), "utf8")),
  ),
) as Readonly<Record<string, string>>;

/** Keys that no literal of the source is, and no template such as `stage.${name}` can give. */
function unasked(keys: readonly string[]): string[] {
  const text = sources.join("\n");
  const literals = new Set([...text.matchAll(/["'`]([\w.-]+)["'`]/g)].map(([, literal]) => literal!));
  const shapes = [...text.matchAll(/`([\w-]+\.[\w.-]*(?:\$\{[^}]*\}[\w.-]*)+)`/g)].map(
    ([, template]) =>
      new RegExp(
        `^${template!
          .split(/\$\{[^}]*\}/)
          .map((part) => part.replaceAll(".", "\\."))
          .join(".+")}$`,
      ),
  );
  return keys.filter((key) => !literals.has(key) && !shapes.some((shape) => shape.test(key)));
}

describe("words", () => {
  it("U21 exist for every key that the source asks for by name", () => {
    const asked = sources.flatMap((text) =>
      [
        ...text.matchAll(/\b(?:(?:t|say)\(|title:)\s*(?:[\w.!= ]+\?\s*)?"([\w.-]+)"(?:\s*:\s*"([\w.-]+)")?/g),
      ].flatMap(([, a, b]) => [a!, ...(b ? [b] : [])]),
    );
    expect(asked.length).toBeGreaterThan(100);
    expect(missing([...new Set(asked)])).toEqual([]);
  });

  it("U21 exist for every parameter and each of its words", () => {
    const keys = PARAMETERS.flatMap((parameter) => [
      `parameter.${parameter.name}`,
      ...(parameter.kind === "word"
        ? parameter.words.map((word) => `parameter.${parameter.name}.${word}`)
        : []),
    ]);
    expect(missing(keys)).toEqual([]);
  });

  it("U21 exist for every unit of a parameter but a pure number", () => {
    const units = PARAMETERS.flatMap((parameter) => (parameter.kind === "number" ? [parameter.unit] : []));
    const keys = [...new Set(units)].filter((unit) => unit !== "1").map((unit) => `unit.${unit}.spoken`);
    expect(missing(keys)).toEqual([]);
  });

  it("U21 exist for every group, stage, rule, scene, colouring, map, case and caution", () => {
    const keys = [
      ...FURTHER_GROUPS.map((group) => `group.${group}`),
      ...STAGES.map((stage) => `stage.${stage}`),
      ...VOLUME_RULES.map((rule) => `volumeRule.${rule}`),
      ...SCENES.map((scene) => `scene.${scene}`),
      ...COLOURINGS.map((colouring) => `colouring.${colouring}`),
      ...OVERLAYS.map((overlay) => `overlay.${overlay}`),
      ...Object.keys(CASES).map((name) => `case.${name}`),
      ...CAUTIONS.map((name) => `caution.${name}`),
    ];
    expect(missing(keys)).toEqual([]);
  });

  it("none is without a place in the source that asks for it", () => {
    expect(unasked(Object.keys(en))).toEqual([]);
    expect(unasked(["stage.glenn", "bench.title", "planted.key"])).toEqual(["planted.key"]);
  });

  it("U21 exist for every row of every ledger", () => {
    const narrowings = {
      pathwayNarrowing: 40,
      leftBranchStenosis: 40,
      rightBranchStenosis: 40,
      fenestrationDiameter: 4,
    };
    const keys = STAGES.flatMap((stage) => {
      const set = Object.fromEntries(
        Object.entries(narrowings).filter(([name]) => {
          const parameter = PARAMETERS.find((each) => each.name === name);
          return parameter && (parameter.stages?.includes(stage) ?? true);
        }),
      );
      const { ledger } = solve({
        kind: "circulation",
        stage,
        body: CASES.caseA,
        volumeRule: "hold-atrial-pressure",
        set,
      }).pathway;
      return ledger.flatMap(({ element, branch }) => [`element.${element}`, `branch.${branch}`]);
    });
    expect(missing([...new Set(keys)])).toEqual([]);
  });
});
