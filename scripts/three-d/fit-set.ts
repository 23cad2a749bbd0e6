/** The 3D set as the fit reads it: what was asked, what came out, and what is a check only. */
import { readFileSync } from "node:fs";
import { BLOOD_DENSITY, bloodViscosity } from "../../src/sim/body/blood.ts";
import { type PathwaySizes, pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import { type FlowSplit, type Streams, streamsOf } from "../../src/sim/hydraulics/loss-law/features.ts";
import type { Body, CirculationRequest, PathwayStage } from "../../src/sim/parameters/request.ts";
import { requestOf } from "./jobs.ts";

interface Measured {
  readonly value: number;
  readonly uncertainty: number;
}

interface Shares {
  readonly left: number;
  readonly right: number;
  readonly uncertainty: number;
  /** standard errors: of a run over time; of runs from other starts, where there are any */
  readonly scatter: number;
  readonly starts?: number;
}

interface StoredCase {
  readonly name: string;
  readonly family: string;
  readonly stage: PathwayStage;
  readonly body: Body;
  readonly set: Readonly<Record<string, number>>;
  readonly index: number;
  /** mL/s */
  readonly flows: Readonly<Record<string, number>>;
  readonly inflow: "parabola" | "flat";
  readonly pulse?: object;
  readonly power: Measured;
  readonly drop: Measured;
  readonly beyond: { readonly power: number };
  readonly shares: { readonly ivc: Shares; readonly svc: Shares };
}

export interface SetCase {
  readonly stored: StoredCase;
  readonly request: CirculationRequest;
  readonly sizes: PathwaySizes;
  readonly flows: FlowSplit;
  readonly streams: Streams;
  readonly fluid: { readonly density: number; readonly viscosity: number };
  /** W and Pa */
  readonly power: number;
  readonly drop: number;
}

/** Cases of their own: a repeat on another grid is none. */
export function readSet(): SetCase[] {
  const file = new URL("../../docs/validation/three-d.json", import.meta.url);
  const { cases } = JSON.parse(readFileSync(file, "utf8")) as { cases: StoredCase[] };
  return cases.filter(({ name }) => !/-grid-\d+$/.test(name)).map(setCase);
}

/** A steady parabola enters: the rest is kept to check the law, not to fit it. */
export const isFitted = ({ stored }: SetCase): boolean => stored.inflow === "parabola" && !stored.pulse;

function setCase(stored: StoredCase): SetCase {
  const request = requestOf(stored as never);
  const si = (name: string) => stored.flows[name]! * 1e-6;
  const flows = { ivc: si("ivc"), svc: si("svc"), left: si("left"), right: si("right") };
  return {
    stored,
    request,
    sizes: pathwaySizes(request),
    flows,
    streams: streamsOf(stored.stage, flows),
    fluid: { density: BLOOD_DENSITY, viscosity: bloodViscosity(stored.body.haemoglobin) },
    power: stored.power.value * 1e-3,
    drop: stored.drop.value * 133.322387415,
  };
}
