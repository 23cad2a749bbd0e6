/** How far the valves of a heart with two ventricles stand open, by the computed flow through each. */
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import { OPEN, type Standing } from "../../anatomy/standing.ts";
import { valueAt } from "../../drawing/trace-clock.ts";
import type { Openings } from "./valve-drawing.ts";

/** 0 shut .. 1 open. */
const rightValvesAt = (
  { traces }: Circulation,
  time: number,
): readonly [tricuspid: number, pulmonary: number] => {
  const open = (name: string): number => {
    const flow = traces.flows[name];
    if (!flow) return 0;
    const greatest = flow.reduce((a, b) => Math.max(a, b), 1e-9);
    return Math.min(1, Math.max(0, valueAt(traces, flow, time) / (OPEN * greatest)));
  };
  return [open("tricuspidValve"), open("pulmonaryValve")];
};

export function openingsAt(
  circulation: Circulation,
  time: number,
  still: boolean,
  { atrioventricular, semilunar }: Standing,
): Openings {
  const [tricuspid, pulmonary] = still ? [1, 0] : rightValvesAt(circulation, time);
  return { tricuspid, pulmonary, mitral: atrioventricular, aortic: semilunar };
}
