import { expect, test } from "vitest";
import { pathwaySizes } from "../../../src/sim/geometry/pathways/sizes.ts";
import { gradeLine, upperGradeLine } from "../../../src/sim/hydraulics/grade-line.ts";
import { BRANCHES, type PathwayFlows } from "../../../src/sim/hydraulics/law.ts";
import { ledger, pathwayLoss } from "../../../src/sim/hydraulics/ledger.ts";
import { baseLaw, pathwayLaw } from "../../../src/sim/hydraulics/pathway-network.ts";
import { developingPipe } from "../../../src/sim/hydraulics/pipe.ts";
import { division as tee } from "../../../src/sim/hydraulics/tee.ts";
import {
  CASES,
  type CirculationRequest,
  PATHWAY_STAGES,
  STAGES,
  type Stage,
} from "../../../src/sim/parameters/request.ts";
import { fromLitresPerMinute } from "../../../src/sim/units.ts";

const ask = (
  stage: Stage,
  set: CirculationRequest["set"] = {},
  body: CirculationRequest["body"] = CASES.caseA,
) => ({ kind: "circulation", stage, body, volumeRule: "hold-output", set }) as const;

function rest(body: CirculationRequest["body"], factor = 1) {
  const total = fromLitresPerMinute(3 * body.bsa * factor);
  return { ivc: 0.55 * total, svc: 0.45 * total, left: 0.45 * total, right: 0.55 * total };
}

const loss = (
  stage: Stage,
  set: CirculationRequest["set"] = {},
  body: CirculationRequest["body"] = CASES.caseA,
  factor = 1,
) => {
  const flows = rest(body, factor);
  return pathwayLoss(pathwayLaw(ask(stage, set, body), flows), flows);
};

test.each(Object.entries(CASES))(
  "%s: each pathway spends 0.2-2 mmHg at rest; offset matters more than type (acceptance fact 11; 3D set)",
  (_, body) => {
    for (const stage of PATHWAY_STAGES) {
      const { pressureDrop, powerLoss } = loss(stage, {}, body);
      expect(pressureDrop).toBeGreaterThan(0.2);
      expect(pressureDrop).toBeLessThan(2);
      expect(powerLoss).toBeGreaterThan(1);
      expect(powerLoss).toBeLessThan(20);
    }
    const far = { cavalOffset: 8 };
    const chamber = loss("atriopulmonary", {}, body).powerLoss;
    for (const stage of ["extracardiac", "lateral-tunnel"] as const) {
      expect(loss(stage, { cavalOffset: -1 }, body).powerLoss).toBeGreaterThan(chamber);
      expect(loss(stage, far, body).powerLoss).toBeLessThan(chamber);
    }
  },
);

test.each(PATHWAY_STAGES)(
  "%s: doubling the flow multiplies power by 4 to 8 (acceptance fact 11; Whitehead 2007)",
  (stage) => {
    const ratio = loss(stage, {}, CASES.caseB, 2).powerLoss / loss(stage, {}, CASES.caseB).powerLoss;
    expect(ratio).toBeGreaterThan(4);
    expect(ratio).toBeLessThan(8);
  },
);

test("a narrowing of 40 % outweighs the difference of tunnel and conduit (Tang 2014, Haggerty 2014)", () => {
  const between = Math.abs(
    loss("lateral-tunnel", {}, CASES.caseB).powerLoss - loss("extracardiac", {}, CASES.caseB).powerLoss,
  );
  const narrowed =
    loss("extracardiac", { leftBranchStenosis: 40 }, CASES.caseB).powerLoss -
    loss("extracardiac", {}, CASES.caseB).powerLoss;
  expect(narrowed).toBeGreaterThan(between);
});

test("offset and flare lower the loss, head-on joints lose most (Dubini 1996, Ensley 1999)", () => {
  const at = (cavalOffset: number, jointFlare: number) =>
    loss("extracardiac", { cavalOffset, jointFlare }).powerLoss;
  expect(at(0, 0)).toBeGreaterThan(at(0, 3));
  expect(at(0, 3)).toBeGreaterThan(at(8, 3));
});

test.each(["conduitDiameter", "tunnelDiameter"])("a %s of 8 mm costs more than the default", (name) => {
  const stage = name === "conduitDiameter" ? "extracardiac" : "lateral-tunnel";
  expect(loss(stage, { [name]: 8 }).pressureDrop).toBeGreaterThan(2 * loss(stage).pressureDrop);
});

test("a conduit keeps its diameter when the body grows", () => {
  const conduit = (body: CirculationRequest["body"]) =>
    pathwayLaw(ask("extracardiac", {}, body)).branches.ivc.find(({ element }) => element === "conduit")!
      .diameter;
  expect(conduit(CASES.caseB)).toBe(conduit(CASES.caseA));
});

test.each(STAGES)(
  "%s: elements are finite, follow on each other without a gap and have names of their own",
  (stage) => {
    const harsh = {
      pathwayNarrowing: 60,
      leftBranchStenosis: 80,
      rightBranchStenosis: 10,
      conduitDiameter: 8,
    };
    const settings: CirculationRequest["set"][] = [{}, harsh, { ...harsh, tunnelDiameter: 8 }];
    for (const set of settings) {
      const law = pathwayLaw(ask(stage, set));
      const all = BRANCHES.flatMap((branch) => law.branches[branch]);
      expect(new Set(all.map(({ element }) => element)).size).toBe(all.length);
      for (const branch of BRANCHES) {
        let end = 0;
        for (const { a, b, inertance, from, to } of law.branches[branch]) {
          expect([a, b, inertance].every((x) => Number.isFinite(x) && x >= 0)).toBe(true);
          expect(from).toBeCloseTo(end, 9);
          expect(to).toBeGreaterThan(from);
          end = to;
        }
      }
    }
  },
);

test("only a pathway with a hole has a fenestration, and its row is the ledger's last", () => {
  expect(pathwayLaw(ask("extracardiac")).fenestration).toBeUndefined();
  expect(pathwayLaw(ask("glenn", { fenestrationDiameter: 4 })).fenestration).toBeUndefined();
  const law = pathwayLaw(ask("extracardiac", { fenestrationDiameter: 4 }));
  const rows = ledger(law, { ...rest(CASES.caseA), fenestration: fromLitresPerMinute(0.5) });
  expect(rows.at(-1)!.element).toBe("fenestration");
  expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
});

test("an element outside its relation's measured range says so", () => {
  const rows = ledger(pathwayLaw(ask("extracardiac")), rest(CASES.caseA));
  expect(rows.find(({ element }) => element === "conduit")!.inRange).toBe(true);
  expect(rows.find(({ element }) => element === "leftTurn")!.inRange).toBe(false);
});

test("samples over a breath spend more than their mean, as the mean of the squares is more than the square of the mean", () => {
  const law = pathwayLaw(ask("extracardiac"));
  const mean = rest(CASES.caseA);
  const breathing = Float64Array.from(
    { length: 64 },
    (_, i) => mean.ivc * (1 + 0.9 * Math.sin((i / 32) * Math.PI)),
  );
  const steady = pathwayLoss(law, mean);
  const pulsing = pathwayLoss(law, { ...mean, ivc: breathing });
  expect(pulsing.powerLoss).toBeGreaterThan(steady.powerLoss);
});

test("the grade line falls from hepatic vein to atrium, meets what it is given and never lies above the energy line", () => {
  const flows: PathwayFlows = rest(CASES.caseA);
  const law = pathwayLaw(ask("extracardiac", { leftBranchStenosis: 40 }), rest(CASES.caseA));
  const drop = ledger(law, flows)
    .filter(({ branch }) => branch === "ivc" || branch === "left")
    .reduce((sum, row) => sum + row.pressureDrop, 0);
  const artery = 12.6 - drop;
  const points = gradeLine(law, flows, {
    hepaticVein: 12.9,
    ivc: 12.6,
    pulmonaryArteryLeft: artery,
    pulmonaryArteryRight: 12.2,
    pulmonaryVein: 7.4,
    atrium: 7,
  });
  expect(law.gradeLung).toBe("left");
  expect(points[0]).toMatchObject({ at: "hepaticVein", station: 0 });
  expect(points.at(-1)).toMatchObject({ at: "atrium", station: 1, pressure: 7 });
  for (let i = 1; i < points.length; i++) {
    expect(points[i]!.station).toBeGreaterThan(points[i - 1]!.station);
    expect(points[i]!.totalPressure).toBeLessThanOrEqual(points[i - 1]!.totalPressure);
    expect(points[i]!.pressure).toBeLessThanOrEqual(points[i]!.totalPressure);
  }
});

test("at the Glenn stage the path from the liver ends in the atrium and that from above goes through a lung; with two ventricles a pump lifts it to the lungs", () => {
  const pressures = {
    hepaticVein: 6.5,
    ivc: 6.3,
    pulmonaryArteryLeft: 12,
    pulmonaryArteryRight: 12,
    pulmonaryVein: 7.4,
    atrium: 6,
  };
  const flows = rest(CASES.caseA);
  const parted = gradeLine(pathwayLaw(ask("glenn")), flows, pressures);
  expect(parted.map(({ at }) => at)).toEqual([
    "hepaticVein",
    "inferiorVenaCava",
    "lowerAtrialEntry",
    "atrium",
  ]);
  const upper = upperGradeLine(pathwayLaw(ask("glenn")), flows, { ...pressures, svc: 12.4 });
  expect(upper[0]).toMatchObject({ station: 0, totalPressure: 12.4 });
  const bed = upper.findIndex(({ at }) => at === "lungBed");
  expect(upper.slice(bed).map(({ pressure }) => pressure)).toEqual([12, 7.4, 6]);
  expect(upper.map(({ station }) => station)).toEqual(
    [...new Set(upper.map(({ station }) => station))].sort(),
  );
  const joined = upperGradeLine(pathwayLaw(ask("extracardiac")), flows, { ...pressures, svc: 12.4 });
  expect(joined).toEqual([]);
  const pumped = gradeLine(pathwayLaw(ask("two-ventricle")), flows, pressures);
  const lifted = pumped.findIndex(({ at }) => at === "rightVentricle");
  expect(pumped[lifted + 1]!.totalPressure).toBeGreaterThan(12);
  expect(pumped[lifted]!.totalPressure).toBeLessThan(6.4);
  expect(pumped.at(-1)).toMatchObject({ at: "atrium", station: 1 });
});

test("at the Glenn stage the drop is the upper vein's, since the lower one never reaches the lungs", () => {
  const flows = rest(CASES.caseA);
  const law = pathwayLaw(ask("glenn"));
  const upper = ledger(law, flows)
    .filter(({ branch }) => branch === "svc")
    .reduce((sum, { pressureDrop }) => sum + pressureDrop, 0);
  const more = pathwayLoss(law, { ...flows, ivc: 2 * flows.ivc }).pressureDrop;
  expect(more).toBe(pathwayLoss(law, flows).pressureDrop);
  expect(more).toBeGreaterThan(upper);
});

test("without given flows, coefficients are taken at 3 L/min/m2, 55 % from below, 45 % to the left lung", () => {
  expect(pathwayLaw(ask("extracardiac"))).toEqual(pathwayLaw(ask("extracardiac"), rest(CASES.caseA)));
  const flows = rest(CASES.caseA);
  const lungs = { left: 0.45 * flows.svc, right: 0.55 * flows.svc };
  expect(pathwayLaw(ask("glenn"))).toEqual(pathwayLaw(ask("glenn"), { ...flows, ...lungs }));
});

test("each section has the relation of its kind: narrowing, hole of the least size, artery, edges both ways", () => {
  const law = pathwayLaw(
    ask("extracardiac", { leftBranchStenosis: 50, conduitDiameter: 12, fenestrationDiameter: 0.05 }),
  );
  const all = BRANCHES.flatMap((branch) => law.branches[branch]);
  const named = (words: RegExp) => all.filter(({ source }) => words.test(source));
  const narrowing = named(/Young & Tsai/);
  expect(narrowing.map(({ element }) => element)).toEqual(["leftBranchStenosis"]);
  expect(narrowing[0]!.diameter).toBeLessThan(0.8 * law.branches.left.at(-1)!.diameter);
  // The vein goes narrower into a conduit of 12 mm, and wider again behind it.
  expect(named(/contraction/).map(({ element }) => element)).toEqual(["conduitEntry"]);
  for (const { diameter, areaAfter } of named(/contraction/))
    expect(diameter ** 2 * (Math.PI / 4)).toBeCloseTo(areaAfter, 12);
  for (const { diameter, areaAfter } of named(/sudden expansion/))
    expect(diameter ** 2 * (Math.PI / 4)).toBeLessThan(areaAfter);
  expect(law.fenestration?.diameter).toBeCloseTo(5e-5, 12);
  const base = baseLaw(ask("extracardiac"), rest(CASES.caseA));
  const artery = base.branches.right.find(({ source }) => /entrance/.test(source))!;
  const alone = developingPipe(
    artery.diameter,
    1e-3 * (artery.to - artery.from),
    rest(CASES.caseA).right,
    law.fluid,
  );
  expect(artery.b).toBeCloseTo(alone.b, 3);
});

test("a pulmonary artery's mouth loses by its speed against the trunk's; without flow as if they were alike", () => {
  const blood = pathwayLaw(ask("atriopulmonary")).fluid;
  const taken = (left: number) => {
    const flows = { ...rest(CASES.caseA), left, right: 3e-5 - left };
    return baseLaw(ask("atriopulmonary", { jointFlare: 0 }), flows).branches.left.find(({ source }) =>
      /dividing/.test(source),
    )!;
  };
  // Idelchik: 1 + r2 over r2, r the branch's speed over the trunk's; ours has a flare of 0 here.
  const { trunk, left } = pathwaySizes(ask("atriopulmonary", { jointFlare: 0 }));
  for (const flow of [1e-5, 2e-5]) {
    const faster = (flow / left ** 2 / 3e-5) * trunk ** 2;
    const mouth = taken(flow);
    expect(mouth.b / tee(mouth.diameter, faster, 0, blood).b).toBeCloseTo(1, 9);
  }
  const still = pathwayLaw(ask("atriopulmonary"), { ivc: 0, svc: 0, left: 0, right: 0 });
  expect(
    BRANCHES.flatMap((branch) => still.branches[branch]).every(({ a, b }) => Number.isFinite(a + b)),
  ).toBe(true);
});

test("facing streams lose more to each other the nearer they meet, and each also by its own speed", () => {
  const flows = rest(CASES.caseA);
  const meets = (cavalOffset: number, branch: "ivc" | "svc") =>
    baseLaw(ask("extracardiac", { cavalOffset }), flows).branches[branch].find(({ source }) =>
      /facing/.test(source),
    )!.b *
    flows[branch] ** 2;
  expect(meets(-1, "svc")).toBeGreaterThan(meets(4, "svc"));
  expect(meets(4, "svc")).toBeGreaterThan(meets(9, "svc"));
  // the upper vein is the narrower one
  expect(meets(2, "svc")).toBeGreaterThan(meets(2, "ivc"));
});
