/** The cases: one-at-a-time families about a centre for each pathway, a spread of everything at once, pairs of grids, a pipe. */
import { adult, BEAT, BREATH, type Case, everything, flows, LEAK, one, sizes } from "./case.ts";
import { denseCases } from "./dense-cases.ts";
import { fillingCases } from "./filling-cases.ts";
import { startCases } from "./start-cases.ts";

const conduit = (): Case[] => {
  const s = "extracardiac";
  return [
    one(s, "centre", "", {}),
    ...sizes(s, "offset", "cavalOffset", [-11, -7, -3.5, 0, 2, 7, 10.5]),
    ...sizes(s, "trunk", "conduitDiameter", [12, 15, 21, 24]),
    ...sizes(s, "headon", "conduitDiameter", [12, 24], { set: { cavalOffset: 0 } }),
    ...sizes(s, "flare", "jointFlare", [0, 6, 9]),
    ...sizes(s, "narrowing", "pathwayNarrowing", [20, 40, 60]),
    ...sizes(s, "leftlung", "leftBranchStenosis", [30, 55]),
    ...sizes(s, "rightlung", "rightBranchStenosis", [30, 55]),
    ...flows(s, "left", [0.3, 0.6, 0.7]),
    ...flows(s, "lower", [0.4, 0.7]),
    ...flows(s, "index", [2, 5, 8]),
    one(s, "adult", "", { body: adult }),
    one(s, "adult", "headon", { body: adult, set: { cavalOffset: 0 } }),
    one(s, "adult", "far", { body: adult, set: { cavalOffset: 14 } }),
    one(s, "adult", "narrow", { body: adult, set: { pathwayNarrowing: 40 } }),
    one(s, "adult", "index-2", { body: adult, index: 2 }),
    one(s, "adult", "index-6", { body: adult, index: 6 }),
    one(s, "fenestration", "", LEAK),
    one(s, "fenestration", "index-6", { ...LEAK, index: 6 }),
    one(s, "flat", "", { inflow: "flat" }),
    one(s, "flat", "headon", { inflow: "flat", set: { cavalOffset: 0 } }),
    one(s, "pulse", "breath", { pulse: BREATH }),
    one(s, "pulse", "beat", { pulse: BEAT }),
  ];
};

const tunnel = (): Case[] => {
  const s = "lateral-tunnel";
  return [
    one(s, "centre", "", {}),
    ...sizes(s, "offset", "cavalOffset", [-10.5, -5, 3.5, 7, 10.5]),
    ...sizes(s, "trunk", "tunnelDiameter", [13, 24]),
    ...sizes(s, "flare", "jointFlare", [0, 8]),
    ...sizes(s, "narrowing", "pathwayNarrowing", [30, 55]),
    ...sizes(s, "leftlung", "leftBranchStenosis", [45]),
    ...flows(s, "left", [0.3, 0.65]),
    ...flows(s, "lower", [0.7]),
    ...flows(s, "index", [2, 6]),
    one(s, "adult", "", { body: adult }),
    one(s, "adult", "far", { body: adult, set: { cavalOffset: 10 } }),
    one(s, "fenestration", "", LEAK),
    one(s, "flat", "", { inflow: "flat" }),
    one(s, "pulse", "breath", { pulse: BREATH }),
  ];
};

const chamber = (): Case[] => {
  const s = "atriopulmonary";
  return [
    one(s, "centre", "", {}),
    ...sizes(s, "offset", "cavalOffset", [-10, 10]),
    ...sizes(s, "trunk", "chamberDiameter", [28, 36, 52]),
    ...sizes(s, "rightlung", "rightBranchStenosis", [40]),
    ...flows(s, "left", [0.3, 0.65]),
    ...flows(s, "lower", [0.7]),
    ...flows(s, "index", [2, 6]),
    one(s, "adult", "", { body: adult, set: { chamberDiameter: 56 } }),
    one(s, "fenestration", "", LEAK),
    one(s, "flat", "", { inflow: "flat" }),
  ];
};

/** The same again on a coarser or finer grid. */
const COARSE = ["ec-offset-10.5", "ec-index-2", "ec-adult-index-2", "lt-offset-7", "ap-trunk-28"];
const FINE = [
  "ec-centre",
  "ec-offset-0",
  "ec-offset-10.5",
  "ec-narrowing-40",
  "ec-adult",
  "lt-offset-7",
  "ap-trunk-28",
];

export function allCases(): Case[] {
  const plain = [
    ...conduit(),
    ...tunnel(),
    ...chamber(),
    ...everything("extracardiac", 1, 14),
    ...everything("lateral-tunnel", 1, 10),
    ...everything("atriopulmonary", 1, 7),
    ...fillingCases(),
    ...denseCases(),
  ];
  const again = (name: string, across: number): Case => {
    const same = plain.find((each) => each.name === name)!;
    return { ...same, name: `${name}-grid-${across}`, family: "grid", across };
  };
  return [
    ...plain,
    ...COARSE.map((name) => again(name, 27)),
    ...FINE.map((name) => again(name, 45)),
    ...startCases(plain),
  ];
}
