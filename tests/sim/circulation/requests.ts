/** Requests and readings that the circulation's tests share. */
import { vi } from "vitest";
import { solve } from "../../../src/sim/circulation/solve.ts";
import {
  type Body,
  CASES,
  type CirculationRequest,
  type ParameterValue,
  type Stage,
  type VolumeRule,
} from "../../../src/sim/parameters/request.ts";

/** Many whole circulations a test, on machines that may be busy with others. */
vi.setConfig({ testTimeout: 60_000 });

export const CHILD: Body = CASES.caseA;
export const ADULT: Body = CASES.caseB;

export function request(
  stage: Stage,
  body: Body = CHILD,
  set: Readonly<Record<string, ParameterValue>> = {},
  volumeRule: VolumeRule = "hold-atrial-pressure",
): CirculationRequest {
  return { kind: "circulation", stage, body, volumeRule, set };
}

export const answer = (...asked: Parameters<typeof request>) => solve(request(...asked));
