/** Repeats from another start: where streams hit each other head-on they may settle in either of two ways, so that one run says little. */
import { pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import { clearance, jetStrength } from "../../src/sim/hydraulics/loss-law/features.ts";
import type { Case } from "./case.ts";
import { requestOf } from "./jobs.ts";

/** About where the streams change sides (clearance in mean radii), by how much a narrowing's jet moves that, and how near is near. */
const PLACE = -0.33;
const BY_JET = 0.18;
const NEAR = 0.3;

const ACROSS = 25;

const isNear = (one: Case): boolean => {
  const sizes = pathwaySizes(requestOf(one));
  const place = PLACE + BY_JET * jetStrength(sizes, { lower: one.lower });
  return Math.abs(clearance(sizes, 0) - place) < NEAR;
};

export const startCases = (cases: readonly Case[]): Case[] =>
  cases
    .filter((one) => one.stage !== "atriopulmonary" && one.inflow === "parabola" && !one.pulse && isNear(one))
    .flatMap((one) =>
      (["lower", "upper"] as const).map((first) => ({
        ...one,
        name: `${one.name}-${first}-first`,
        family: "start",
        first,
        across: ACROSS,
      })),
    );
